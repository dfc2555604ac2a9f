import { useEffect, useRef, useState } from 'preact/hooks';
import type { PageSize } from '#lib/capture/pdf/frame.ts';
import type { Rect } from '#lib/capture/pdf/place.ts';
import type { TextLayerOf } from '#lib/capture/pdf/selected.ts';
import { t } from '../text.ts';
import { boxStyle } from './box-style.ts';
import { drawPage, layText } from './draw-page.ts';
import type { PDFDocumentProxy } from './engine.ts';
import { FrameLayer, type Framing } from './frame-layer.tsx';

interface PageViewProps {
  doc: PDFDocumentProxy;
  number: number;
  size: PageSize;
  /** Pixels of the screen for a point. */
  scale: number;
  /** Drawn; else left blank. */
  isShown: boolean;
  /** What is marked on it. */
  marks: readonly Rect[] | undefined;
  /** Set while the student draws a frame. */
  framing: Framing | null;
  /** Told when the page's text can be selected, and when it no longer can. */
  register(number: number, layer: TextLayerOf | null): void;
}

/** One page: drawn while it is near, with its text over it. */
export function PageView(props: PageViewProps) {
  const { number, size, scale, isShown, marks, framing } = props;
  const [failed, setFailed] = useState(false);
  return (
    <section
      class="pdf-page"
      data-page={number}
      tabIndex={-1}
      aria-label={t('pdfPageNumber', number)}
      style={{
        width: `${size.width * scale}px`,
        height: `${size.height * scale}px`,
        '--total-scale-factor': String(scale),
      }}
    >
      {isShown && <Sheet {...props} fail={() => setFailed(true)} />}
      {isShown && failed && <p class="pdf-page-trouble">{t('pdfPageBroken', number)}</p>}
      {marks?.map((rect, i) => (
        <div key={i} class="pdf-mark" style={boxStyle(rect, scale)} />
      ))}
      {isShown && framing && <FrameLayer number={number} size={size} scale={scale} framing={framing} />}
    </section>
  );
}

function Sheet({ doc, number, scale, register, fail }: PageViewProps & { fail(): void }) {
  const picture = useRef<HTMLDivElement>(null);
  const text = useRef<HTMLDivElement>(null);
  const failing = useRef(fail);
  useEffect(() => {
    failing.current = fail;
  });
  useEffect(() => {
    const closing = new AbortController();
    doc
      .getPage(number)
      .then((page) => drawPage(page, scale, closing.signal))
      .then(
        (canvas) => canvas && picture.current?.replaceChildren(canvas),
        () => closing.signal.aborted || failing.current(),
      );
    return () => closing.abort();
  }, [doc, number, scale]);
  useEffect(() => {
    const closing = new AbortController();
    doc
      .getPage(number)
      .then((page) => layText(page, text.current!, closing.signal))
      // A page whose text cannot be read can still be framed.
      .then((layer) => layer && register(number, layer))
      .catch(() => closing.signal.aborted || register(number, { page: number, pieces: [], elements: [] }));
    return () => {
      closing.abort();
      register(number, null);
    };
  }, [doc, number, register]);
  return (
    <>
      <div class="pdf-picture" ref={picture} aria-hidden="true" />
      <div class="pdf-text" ref={text} />
    </>
  );
}

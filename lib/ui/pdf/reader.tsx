import { type ComponentChildren } from 'preact';
import { useCallback, useEffect, useMemo, useRef } from 'preact/hooks';
import type { PdfPlace } from '#lib/capture/pdf/place.ts';
import { deskLink } from '../parts/desk-link.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t } from '../text.ts';
import { onAsked } from './ask-reader.ts';
import { KeepFile } from './keep-file.tsx';
import type { OpenPdf } from './open-pdf.ts';
import { PageView } from './page-view.tsx';
import { SlipPanel } from './slip-panel.tsx';
import type { Marks } from './subject.ts';
import { Toolbar } from './toolbar.tsx';
import { focusPage, scrollToPage, useCurrentPage } from './use-current-page.ts';
import { type Keeping, useKeeping } from './use-keeping.ts';
import { useNearPages } from './use-near-pages.ts';
import { useSelection } from './use-selection.ts';
import { useSizes } from './use-sizes.ts';
import { useSteadySelection } from './use-steady-selection.ts';
import { useZoom } from './use-zoom.ts';

interface ReaderProps {
  pdf: OpenPdf;
  /** Where to open it, and what to mark there. */
  place: PdfPlace | null;
  /** Asks for another file. */
  another(): void;
}

/** A PDF with its pages one below the other, and the slip beside them. */
export function Reader({ pdf, place, another }: ReaderProps) {
  const { doc, firstSize } = pdf;
  const holder = useRef<HTMLElement>(null);
  const { sizes, known } = useSizes(doc, firstSize);
  const widest = useMemo(() => Math.max(...sizes.map(({ width }) => width)), [sizes]);
  const zoom = useZoom(holder, widest);
  const page = useCurrentPage(holder);
  const near = useNearPages(holder, doc.numPages);
  const selection = useSelection();
  const keeping = useKeeping(pdf, holder, zoom.scale);
  useSteadySelection(holder);

  const scale = useRef(zoom.scale);
  useEffect(() => {
    scale.current = zoom.scale;
  });
  const goTo = useCallback(
    async ({ page: number, rect }: PdfPlace) => {
      await known(number);
      scrollToPage(holder.current!, Math.min(number, doc.numPages), rect, scale.current);
    },
    [doc, known],
  );
  useEffect(() => {
    if (place) void goTo(place);
  }, [place, goTo]);

  const { keepSelection, startFrame, leave } = keeping;
  useEffect(() => {
    const closing = new AbortController();
    onAsked((wish) => (wish === 'frame' ? startFrame() : keepSelection()), closing.signal);
    return () => closing.abort();
  }, [keepSelection, startFrame]);

  const opened: Marks = useMemo(() => new Map(place?.rect ? [[place.page, [place.rect]]] : []), [place]);
  const marks = keeping.subject?.marks ?? opened;
  const { framing, register } = keeping;
  // Pages are many, and most of what changes here does not change them.
  const pages = useMemo(() => {
    const isSelected = (number: number) =>
      selection !== null && number >= selection.first && number <= selection.last;
    return sizes.map((size, i) => (
      <PageView
        key={i}
        doc={doc}
        number={i + 1}
        size={size}
        scale={zoom.scale}
        isShown={near.has(i + 1) || isSelected(i + 1)}
        marks={marks.get(i + 1)}
        framing={framing}
        register={register}
      />
    ));
  }, [doc, sizes, zoom.scale, near, selection, marks, framing, register]);
  return (
    <div class="pdf-reader" onKeyDown={(event) => event.key === 'Escape' && leave()}>
      <Bar keeping={keeping}>
        <Toolbar
          page={page}
          pages={doc.numPages}
          goTo={(number) =>
            void goTo({ page: number, rect: null }).then(() => focusPage(holder.current, number))
          }
          zoom={zoom}
          canKeep={selection !== null}
          keep={keepSelection}
          isFraming={framing !== null}
          frame={startFrame}
        />
      </Bar>
      <aside class="pdf-side" aria-label={t('pdfAbout')}>
        <Side pdf={pdf} another={another} keeping={keeping} page={page} />
      </aside>
      <main class="pdf-pages" ref={holder} aria-label={pdf.source.title}>
        {pages}
      </main>
    </div>
  );
}

function Bar({ keeping, children }: { keeping: Keeping; children: ComponentChildren }) {
  const { framing, trouble } = keeping;
  return (
    <header class="pdf-bar">
      {children}
      <div class="pdf-notes">
        <p id="pdf-frame-how" class={framing ? 'remark' : 'unseen'} role="status">
          {framing && t('pdfFrameHow')}
        </p>
        <Trouble text={trouble} />
      </div>
    </header>
  );
}

interface SideProps extends Pick<ReaderProps, 'pdf' | 'another'> {
  keeping: Keeping;
  page: number;
}

function Side({ pdf, another, keeping, page }: SideProps) {
  const { subject, textless, leave } = keeping;
  if (subject)
    // Another passage is another slip.
    return <SlipPanel key={JSON.stringify(subject.selectors)} subject={subject} leave={leave} />;
  return <About pdf={pdf} another={another} textless={textless.has(page) ? page : null} />;
}

interface AboutProps extends Pick<ReaderProps, 'pdf' | 'another'> {
  /** The page that is read, when no text can be selected on it. */
  textless: number | null;
}

function About({ pdf, another, textless }: AboutProps) {
  return (
    <div class="pdf-about stack">
      <h1>{pdf.source.title}</h1>
      <p class="soft wrap">{[pdf.source.author, pdf.file.name].filter(Boolean).join(' · ')}</p>
      <p>{t('pdfHow')}</p>
      <div role="status">{textless !== null && <p class="remark">{t('pdfNoText', textless)}</p>}</div>
      <KeepFile file={pdf.file} source={pdf.source} />
      <div class="row">
        <button onClick={another}>{t('pdfAnother')}</button>
        <a href={deskLink('coverage')}>{t('openDesk')}</a>
      </div>
    </div>
  );
}

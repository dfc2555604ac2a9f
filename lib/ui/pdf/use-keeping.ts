import { useCallback, useMemo, useRef, useState } from 'preact/hooks';
import type { Rect } from '#lib/capture/pdf/place.ts';
import type { TextLayerOf } from '#lib/capture/pdf/selected.ts';
import { tell } from '../text.ts';
import type { Framing } from './frame-layer.tsx';
import type { OpenPdf } from './open-pdf.ts';
import { type PdfSubject, frameSubject, selectionSubject } from './subject.ts';
import { selectedRange } from './use-selection.ts';

export interface Keeping {
  /** What the slip is about; null while none is open. */
  subject: PdfSubject | null;
  framing: Framing | null;
  trouble: string | null;
  /** Pages on which no text can be selected, of those looked at. */
  textless: ReadonlySet<number>;
  register(number: number, layer: TextLayerOf | null): void;
  keepSelection(): void;
  /** Starts a frame on the page that is in view, or gives it up. */
  startFrame(): void;
  /** Closes the slip, else gives the frame up. */
  leave(): void;
}

/** What is being kept from a PDF: a passage or a frame, up to the slip. */
export function useKeeping(pdf: OpenPdf, holder: { current: HTMLElement | null }, scale: number): Keeping {
  const layers = useRef(new Map<number, TextLayerOf>());
  const [textless, setTextless] = useState<ReadonlySet<number>>(new Set());
  const [subject, setSubject] = useState<PdfSubject | null>(null);
  const [frame, setFrame] = useState<{ page: number; rect: Rect } | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);

  const register = useCallback((number: number, layer: TextLayerOf | null) => {
    if (!layer) return void layers.current.delete(number);
    layers.current.set(number, layer);
    if (layer.pieces.every(({ text }) => text.trim() === ''))
      setTextless((before) => new Set(before).add(number));
  }, []);

  const open = useCallback(async (make: () => PdfSubject | Promise<PdfSubject>) => {
    setTrouble(null);
    try {
      setSubject(await make());
      setFrame(null);
    } catch (error) {
      setTrouble(tell(error));
    }
  }, []);

  const keepSelection = useCallback(
    () => void open(() => selectionSubject(pdf, [...layers.current.values()], selectedRange())),
    [open, pdf],
  );
  const keepFrame = useCallback(
    (page: number, rect: Rect) => void open(() => frameSubject(pdf, page, rect)),
    [open, pdf],
  );
  const startFrame = useCallback(() => {
    setSubject(null);
    const first = firstFrame(holder.current!, scale);
    setFrame((before) => (before ? null : first));
  }, [holder, scale]);

  const framing = useMemo<Framing | null>(
    () => frame && { ...frame, change: (page, rect) => setFrame({ page, rect }), keep: keepFrame },
    [frame, keepFrame],
  );
  const leave = useCallback(() => {
    setTrouble(null);
    if (subject) setSubject(null);
    else setFrame(null);
  }, [subject]);
  return { subject, framing, trouble, textless, register, keepSelection, startFrame, leave };
}

/** The page that shows most of itself, and a frame in the middle of what it shows. */
function firstFrame(holder: HTMLElement, scale: number): { page: number; rect: Rect } {
  let best = { page: 1, seen: 0, top: 0, width: 1 };
  const bar = document.querySelector('.pdf-bar')?.getBoundingClientRect().bottom ?? 0;
  for (const page of holder.querySelectorAll<HTMLElement>('[data-page]')) {
    const box = page.getBoundingClientRect();
    const seen = Math.min(box.bottom, innerHeight) - Math.max(box.top, bar);
    if (seen > best.seen)
      best = { page: Number(page.dataset.page), seen, top: Math.max(bar - box.top, 0), width: box.width };
  }
  return {
    page: best.page,
    rect: {
      left: best.width / scale / 4,
      top: (best.top + best.seen / 4) / scale,
      width: best.width / scale / 2,
      height: best.seen / scale / 2,
    },
  };
}

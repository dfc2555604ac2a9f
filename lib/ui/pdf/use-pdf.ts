import { useCallback, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { PdfPlace } from '#lib/capture/pdf/place.ts';
import { fileOf } from '#lib/store/actions/files.ts';
import { readOne } from '#lib/store/read.ts';
import type { Db } from '#lib/store/schema.ts';
import { t, tell } from '../text.ts';
import { type OpenPdf, openPdf } from './open-pdf.ts';
import { type PdfFile, pickedFile } from './pdf-file.ts';
import { startOf } from './pdf-link.ts';
import { takeFromTab } from './tab-bytes.ts';

/** Where the reader stands. */
export type Phase =
  | { is: 'choosing'; trouble: string | null; hint: string | null }
  | { is: 'opening'; name: string; share: number | null }
  | { is: 'locked'; name: string; isAgain: boolean; answer(password: string): void }
  | { is: 'open'; pdf: OpenPdf; place: PdfPlace | null };

export interface PdfState {
  phase: Phase;
  /** Opens a file that was picked or dropped. */
  pick(file: File): void;
  /** Closes what is open and asks for a file. */
  choose(): void;
}

/** The file the student asked for but the deck does not hold: where it is to be opened once it is dropped. */
interface Wanted {
  url: string;
  place: PdfPlace | null;
}

/** Opens what the address names, then whatever the student picks. The one before is closed. */
export function usePdf(db: Db): PdfState {
  const [phase, setPhase] = useState<Phase>({ is: 'choosing', trouble: null, hint: null });
  const closing = useRef(new AbortController());
  const wanted = useRef<Wanted | null>(null);

  const begin = useCallback((work: (show: (phase: Phase) => void, signal: AbortSignal) => Promise<void>) => {
    closing.current.abort();
    closing.current = new AbortController();
    const { signal } = closing.current;
    const show = (next: Phase) => {
      if (!signal.aborted) setPhase(next);
    };
    work(show, signal).catch((error: unknown) => show({ is: 'choosing', trouble: tell(error), hint: null }));
  }, []);

  const pick = useCallback(
    (file: File) =>
      begin(async (show, signal) => {
        show({ is: 'opening', name: file.name, share: null });
        const picked = await pickedFile(file);
        const place = wanted.current?.url === picked.url ? wanted.current.place : null;
        history.replaceState(null, '', location.pathname);
        await openInto(picked, place, show, signal);
      }),
    [begin],
  );
  const choose = useCallback(
    () => begin(async (show) => show({ is: 'choosing', trouble: null, hint: null })),
    [begin],
  );

  // Before the page can be used: else what is picked at once would be given up for this.
  useLayoutEffect(() => {
    const start = () => begin((show, signal) => startFrom(db, wanted, show, signal));
    start();
    const leaving = new AbortController();
    addEventListener('hashchange', start, { signal: leaving.signal });
    return () => {
      leaving.abort();
      closing.current.abort();
    };
  }, [db, begin]);
  return { phase, pick, choose };
}

type Show = (phase: Phase) => void;

async function startFrom(
  db: Db,
  wanted: { current: Wanted | null },
  show: Show,
  signal: AbortSignal,
): Promise<void> {
  const { tabId, sourceId, place } = startOf(location.hash);
  if (tabId !== null) {
    show({ is: 'opening', name: '', share: 0 });
    const file = await takeFromTab(tabId, (share) => show({ is: 'opening', name: '', share }));
    return openInto(file, place, show, signal);
  }
  const source = sourceId === null ? undefined : await readOne(db, 'sources', sourceId);
  if (!source) return show({ is: 'choosing', trouble: null, hint: null });
  const file = await fileOf(db, source.id);
  if (file) return openInto({ name: file.name, bytes: file.bytes, url: source.url }, place, show, signal);
  wanted.current = { url: source.url, place };
  show({ is: 'choosing', trouble: null, hint: t('pdfNotKept', source.title) });
}

async function openInto(
  file: PdfFile,
  place: PdfPlace | null,
  show: Show,
  signal: AbortSignal,
): Promise<void> {
  const opening: Phase = { is: 'opening', name: file.name, share: null };
  show(opening);
  const ask = (isAgain: boolean) =>
    new Promise<string>((resolve) => {
      const answer = (password: string) => {
        show(opening);
        resolve(password);
      };
      show({ is: 'locked', name: file.name, isAgain, answer });
    });
  const pdf = await openPdf(file, ask, signal);
  show({ is: 'open', pdf, place });
}

import { useRef, useState } from 'preact/hooks';
import { HEAVIEST_FILE } from '#lib/model/source-file.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { decodeText } from '#lib/syllabus/bring-in/decode-text.ts';
import type { TextFormat } from '#lib/syllabus/bring-in/read-text.ts';
import type { OutlineDraftRow } from '#lib/syllabus/outline-row.ts';
import { type Syllabus, rowsOf } from '#lib/syllabus/rows-of.ts';
import { hasHeader } from '../../pdf/engine.ts';
import { sizeText } from '../../pdf/pdf-file.ts';
import { tell } from '../../text.ts';
import { type Draft, type DraftSource, draftOfPages, draftOfText } from './draft.ts';
import type { Progress } from './read-pdf.ts';

export interface DraftState {
  /** What is being put right; undefined while there is nothing. */
  draft: Draft | undefined;
  /** Null where there is nothing to undo. */
  undo: (() => void) | null;
  /** What went wrong in reading. */
  trouble: string | null;
  /** How far the reading of a PDF has come; null while none is read. */
  progress: Progress | null;
  /** Ends the reading of a PDF: what was read till then is shown. */
  stop(): void;
  readText(text: string, format: TextFormat | null): void;
  readFile(file: File, format: TextFormat | null): void;
  readPages(source: Extract<DraftSource, { is: 'pdf' }>): void;
  editSaved(): void;
  change(rows: OutlineDraftRow[]): void;
  leave(): void;
}

/** The draft of a syllabus, with every change since it was begun. */
export function useDraft(saved: Syllabus): DraftState {
  const [history, setHistory] = useState<Draft[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [progress, setProgress] = useState<Progress | null>(null);
  const stopping = useRef(new AbortController());
  const push = (next: Draft) => setHistory((before) => [...before, next]);
  const read = (work: () => Promise<Draft>) => {
    setTrouble(null);
    work()
      .then(push, (error: unknown) => setTrouble(tell(error)))
      .finally(() => setProgress(null));
  };
  const draft = history.at(-1);
  return {
    draft,
    undo: history.length > 1 ? () => setHistory(history.slice(0, -1)) : null,
    trouble,
    progress,
    stop: () => stopping.current.abort(),
    readText: (text, format) => read(() => draftOfText(text, format, saved)),
    readFile: (file, format) => {
      stopping.current = new AbortController();
      const { signal } = stopping.current;
      read(() => draftOfFile(file, format, saved, setProgress, signal));
    },
    readPages: (source) => read(() => draftOfPages(source, saved)),
    editSaved: () => push({ rows: rowsOf(saved), remarks: [], source: { is: 'saved' } }),
    change: (rows) => push({ ...draft!, rows }),
    leave: () => {
      setHistory([]);
      setTrouble(null);
    },
  };
}

async function draftOfFile(
  file: File,
  format: TextFormat | null,
  saved: Syllabus,
  tellProgress: (progress: Progress) => void,
  stop: AbortSignal,
): Promise<Draft> {
  if (file.size > HEAVIEST_FILE)
    throw new StudentError('errorSyllabusHeavy', sizeText(file.size), sizeText(HEAVIEST_FILE));
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (!hasHeader(bytes)) return draftOfText(decodeText(bytes), format, saved);
  const { readPdf } = await import('./read-pdf.ts');
  const { pages, of } = await readPdf(bytes, tellProgress, stop);
  const to = pages.at(-1)?.page ?? 1;
  return draftOfPages({ is: 'pdf', name: file.name, pages, of, from: 1, to }, saved);
}

import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { cleanPassage } from '#lib/capture/sanitise.ts';
import { type Piece, hasTex, splitTex } from '#lib/notes/split-tex.ts';
import { t } from '../text.ts';

type Formula = Extract<Piece, { kind: 'maths' }>;

/** A formula as MathML nodes. Throws what the reader of TeX says where it does not parse. */
export type Typeset = (formula: Formula) => DocumentFragment;

let typesetter: Promise<Typeset> | undefined;

/** The reader of TeX is large: it is loaded when the first formula is to be shown. */
export function loadTypeset(): Promise<Typeset> {
  typesetter ??= import('temml').then(({ default: temml }) => ({ tex, display }) => {
    const markup = temml.renderToString(tex, { displayMode: display, throwOnError: true, annotate: true });
    return cleanPassage(markup, document);
  });
  return typesetter;
}

interface WordsProps {
  text: string;
  /** Formulas that are set apart stand in the line all the same: for excerpts. */
  isInLine?: boolean;
}

/** Something the student wrote: words as they are, and TeX between its delimiters as formulas. */
export function Words({ text, isInLine = false }: WordsProps) {
  const pieces = useMemo(() => splitTex(text), [text]);
  return (
    <>
      {pieces.map((piece, index) =>
        piece.kind === 'words' ? (
          piece.text
        ) : (
          <FormulaShown
            key={`${index} ${piece.tex}`}
            formula={isInLine ? { ...piece, display: false } : piece}
          />
        ),
      )}
    </>
  );
}

function FormulaShown({ formula }: { formula: Formula }) {
  const box = useRef<HTMLSpanElement>(null);
  const { tex, display } = formula;
  useEffect(() => {
    let gone = false;
    void loadTypeset().then((typeset) => {
      if (gone) return;
      try {
        box.current!.replaceChildren(typeset({ kind: 'maths', tex, display }));
      } catch {
        // Beside the field where it was typed it says why; here the TeX itself is the best there is.
        box.current!.replaceChildren(tex);
      }
    });
    return () => {
      gone = true;
    };
  }, [tex, display]);
  return (
    <span class={display ? 'formula apart' : 'formula'} ref={box}>
      {tex}
    </span>
  );
}

/** Beside a field: how the formulas in it come out, and which of them do not parse and why. */
export function FormulaCheck({ text }: { text: string }) {
  const [troubles, setTroubles] = useState<string[]>([]);
  const isMaths = hasTex(text);
  useEffect(() => {
    if (!isMaths) return setTroubles([]);
    let gone = false;
    void loadTypeset().then((typeset) => {
      if (!gone) setTroubles(splitTex(text).flatMap((piece) => troubleWith(piece, typeset)));
    });
    return () => {
      gone = true;
    };
  }, [text, isMaths]);
  if (!isMaths) return null;
  return (
    <div class="formula-check">
      <p class="soft" aria-hidden="true">
        <Words text={text} />
      </p>
      {troubles.map((trouble) => (
        <p class="trouble" role="alert" key={trouble}>
          {trouble}
        </p>
      ))}
    </div>
  );
}

function troubleWith(piece: Piece, typeset: Typeset): string[] {
  if (piece.kind === 'words') return [];
  try {
    typeset(piece);
    return [];
  } catch (error) {
    const why = error instanceof Error ? error.message.replace(/^.*?parse error:?\s*/i, '') : String(error);
    return [t('formulaTrouble', piece.tex, why)];
  }
}

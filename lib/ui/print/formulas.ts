import { type Typeset, loadTypeset } from '../parts/words.tsx';

/** Formulas of printed notes, set at once: what is measured has to stand there when it is. */
export interface Formulas {
  /** A formula as nodes of its own; null where its TeX does not parse. */
  nodesOf(tex: string, display: boolean): DocumentFragment | null;
}

/** Each formula is set once and copied; what a long session no longer shows is forgotten with the rest. */
const MOST_KEPT = 5000;

let loading: Promise<Formulas> | undefined;
let loaded: Formulas | null = null;

/** Loads the reader of TeX, once. */
export const loadFormulas = (): Promise<Formulas> =>
  (loading ??= loadTypeset().then((typeset) => (loaded = keeping(typeset))));

/** The reader of TeX where it has been loaded before. */
export const loadedFormulas = (): Formulas | null => loaded;

function keeping(typeset: Typeset): Formulas {
  const kept = new Map<string, DocumentFragment | null>();
  return {
    nodesOf(tex, display) {
      const key = `${display} ${tex}`;
      if (!kept.has(key)) {
        if (kept.size >= MOST_KEPT) kept.clear();
        kept.set(key, setOrNull(typeset, tex, display));
      }
      const nodes = kept.get(key);
      return nodes ? (nodes.cloneNode(true) as DocumentFragment) : null;
    },
  };
}

function setOrNull(typeset: Typeset, tex: string, display: boolean): DocumentFragment | null {
  try {
    return typeset({ kind: 'maths', tex, display });
  } catch {
    // Beside the field where it was typed it says why.
    return null;
  }
}

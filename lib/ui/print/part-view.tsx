import type { ComponentChildren } from 'preact';
import { useCallback } from 'preact/hooks';
import type { LaidBit, PrintLook, Shrunk, TextBlock } from './cells.ts';
import type { Formulas } from './formulas.ts';

interface PartProps {
  block: TextBlock;
  look: PrintLook;
  /** The cells that stand side by side, or one over another, in this part. */
  cells: readonly (readonly LaidBit[])[];
  isFirst: boolean;
  isLast: boolean;
  formulas: Formulas | null;
  /** In CSS pixels; without it, as tall as it comes out. */
  height?: number;
}

/** One part of a block as it is printed: the whole of it, or one line of a long one. */
export function PartView({ block, look, cells, isFirst, isLast, formulas, height }: PartProps) {
  const name = ['print-part', `print-${block.kind}`, isFirst && 'first', isLast && 'last'];
  if (look === 'strip') name.push('print-strip');
  if (!isFirst || !isLast) name.push('print-one-line');
  const style: Record<string, string | number> = {};
  if (block.kind === 'line' && block.depth > 0) style['--depth'] = block.depth;
  if (height !== undefined) style.height = `${height}px`;
  const children = cells.map((bits, index) => (
    <span class="print-cell" key={index}>
      {bits.map((bit, place) => (
        <BitView key={place} bit={bit} formulas={formulas} />
      ))}
    </span>
  ));
  const attributes = { class: name.filter(Boolean).join(' '), style, children };
  if (block.kind === 'topic') return <Heading level={block.level} {...attributes} />;
  return <div {...attributes} data-depth={block.kind === 'line' ? block.depth : undefined} />;
}

const HEADINGS = ['h2', 'h3', 'h4', 'h5', 'h6'] as const;

interface HeadingProps {
  level: number;
  class: string;
  style: Record<string, string | number>;
  children: ComponentChildren;
}

function Heading({ level, ...attributes }: HeadingProps) {
  const Tag = HEADINGS[Math.min(level, HEADINGS.length - 1)]!;
  return <Tag {...attributes} data-level={Math.min(level, 2)} />;
}

interface BitProps {
  bit: LaidBit;
  formulas: Formulas | null;
}

// Three components, so that one kind of bit never takes over the nodes of another: those of a formula are not Preact's.
function BitView({ bit, formulas }: BitProps) {
  if (bit.kind === 'words') return <WordsView bit={bit} />;
  if (bit.shrunk) return <ShrunkView bit={bit} formulas={formulas} shrunk={bit.shrunk} />;
  return <FormulaView bit={bit} formulas={formulas} />;
}

type FormulaBit = Extract<LaidBit, { kind: 'maths' }>;

const WordsView = ({ bit }: { bit: Extract<LaidBit, { kind: 'words' }> }) => (
  <span class={`print-${bit.style}`}>{bit.text}</span>
);

/** Puts a formula into its box, once; its TeX where the reader of TeX is not there yet. */
function useFormula({ tex, display }: FormulaBit, formulas: Formulas | null) {
  return useCallback(
    (box: HTMLElement | null) => box?.replaceChildren(formulas?.nodesOf(tex, display) ?? tex),
    [tex, display, formulas],
  );
}

function FormulaView({ bit, formulas }: BitProps & { bit: FormulaBit }) {
  const name = `print-${bit.style} print-formula${bit.display ? ' apart' : ''}`;
  return <span class={name} ref={useFormula(bit, formulas)} />;
}

function ShrunkView({ bit, formulas, shrunk }: BitProps & { bit: FormulaBit; shrunk: Shrunk }) {
  const { scale, width, height } = shrunk;
  return (
    <span class={`print-${bit.style} print-formula apart`}>
      <span class="print-shrunk" style={{ width: `${width}px`, height: `${height}px` }}>
        <span ref={useFormula(bit, formulas)} style={{ transform: `scale(${scale})` }} />
      </span>
    </span>
  );
}

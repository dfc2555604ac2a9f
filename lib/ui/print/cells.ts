import { type Bit, bitsOf, lineBits } from '#lib/notes/print/bits.ts';
import type { CardBlock, PictureBlock, PrintBlock } from '#lib/notes/print/blocks.ts';
import { topicName } from '../parts/topic-name.ts';
import { tn } from '../text.ts';

/** What is printed: the notes, with their rests on the right to be covered, or questions with the answers behind. */
export type PrintLook = 'notes' | 'strip' | 'cards';

/** A formula that is too large for its column: it is set apart and drawn smaller, with this size in CSS pixels. */
export interface Shrunk {
  scale: number;
  width: number;
  height: number;
}

/** Words and formulas as they are laid out. */
export type LaidBit = Bit & { shrunk?: Shrunk };

export type TextBlock = Exclude<PrintBlock, PictureBlock>;

/** What a block says, in one cell, or in two: side by side on a cover strip, front and back on a card. */
export function cellsOf(block: TextBlock, look: PrintLook): Bit[][] {
  switch (block.kind) {
    case 'topic': {
      const code: Bit[] = block.code === '' ? [] : [words('code', `${block.code} `)];
      return [[...code, words('title', block.title)]];
    }
    case 'line':
      if (look !== 'strip') return [lineBits(block.lead, block.rest)];
      return [
        lineBits(block.lead, '').map((bit) => (block.rest === '' ? bit : { ...bit, style: 'lead' })),
        lineBits('', block.rest),
      ];
    case 'card':
      return cardCells(block);
  }
}

function cardCells({ number, topic, marks, prompt, answer }: CardBlock): Bit[][] {
  const front = `${number}  ${topicName(topic)} · ${tn('marks', marks)}\n`;
  return [
    [words('code', front), ...bitsOf('rest', prompt)],
    [words('code', `${number}\n`), ...bitsOf('rest', answer)],
  ];
}

const words = (style: Bit['style'], text: string): Bit => ({ kind: 'words', style, text });

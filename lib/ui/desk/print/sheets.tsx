import { facesOf } from '#lib/notes/print/faces.ts';
import type { Column, Placed } from '#lib/notes/print/paginate.ts';
import { type Frame, columnLeft } from '#lib/notes/print/paper.ts';
import type { PictureBlock } from '#lib/notes/print/blocks.ts';
import { DEPTH_WIDTH, LEADS_WIDTH } from '../../print/measurer.tsx';
import { PartView } from '../../print/part-view.tsx';
import type { LaidBlock, SidesCounter } from '../../print/sides-counter.ts';
import { useWidth } from '../../parts/use-width.ts';
import { t } from '../../text.ts';

interface SheetsProps {
  /** What stands at the head of every side. */
  name: string;
  counter: SidesCounter;
  /** Addresses of the pictures, by their ids. */
  pictures: ReadonlyMap<string, string>;
}

/** One side of paper: its columns from left to right. */
interface Shown {
  columns: { column: Column; place: number }[];
  /** Which of two cells is printed: the question on the front or the answer on the back; null for all of them. */
  cell: 0 | 1 | null;
}

/** The sides as they are printed, each a box of the size of the paper. On a narrow screen they are shown smaller. */
export function Sheets({ name, counter, pictures }: SheetsProps) {
  const { frame } = counter;
  const { box, width } = useWidth<HTMLDivElement>(Math.ceil(frame.page.width));
  const shown = shownSides(counter);
  const style = {
    '--page-width': `${frame.page.width}px`,
    '--page-height': `${frame.page.height}px`,
    '--scale': Math.min(1, width / frame.page.width),
  };
  return (
    <div class="print-pages" ref={box} style={style}>
      {shown.map((side, index) => (
        <div class="print-holder" key={index}>
          <section class="print-page" aria-label={t('printPage', index + 1, shown.length)}>
            <p class="print-head" style={{ left: `${frame.side}px`, right: `${frame.side}px` }}>
              <span>{headOf(name, side.cell)}</span>
              <span>{t('printPage', index + 1, shown.length)}</span>
            </p>
            {frame.columns === 2 && <Rule frame={frame} />}
            {side.columns.map(({ column, place }, across) => (
              <ColumnView key={place} {...{ column, across, counter, pictures }} cell={side.cell} />
            ))}
          </section>
        </div>
      ))}
    </div>
  );
}

function shownSides({ pages, look }: SidesCounter): Shown[] {
  if (look === 'cards')
    return facesOf(pages).map(({ columns, isFront }) => ({ columns, cell: isFront ? 0 : 1 }));
  return pages.map((side) => ({ columns: side.map((column, place) => ({ column, place })), cell: null }));
}

const headOf = (name: string, cell: Shown['cell']): string =>
  cell === null ? name : `${name} · ${cell === 0 ? t('printFront') : t('printBack')}`;

/** The line between two columns. */
function Rule({ frame }: { frame: Frame }) {
  const height = `${frame.columnHeight}px`;
  return (
    <div class="print-rule" style={{ left: `${frame.page.width / 2}px`, top: `${frame.top}px`, height }} />
  );
}

interface ColumnProps extends Omit<SheetsProps, 'name'> {
  column: Column;
  /** Its place from the left. */
  across: number;
  cell: Shown['cell'];
}

function ColumnView({ column, across, counter, pictures, cell }: ColumnProps) {
  const { frame, look } = counter;
  const style = {
    left: `${columnLeft(frame, across)}px`,
    top: `${frame.top}px`,
    width: `${frame.columnWidth}px`,
    height: `${frame.columnHeight}px`,
  };
  return (
    <div class={`print-column placed ${look}`} style={style}>
      {column.map((placed) => {
        const laid = counter.laid[placed.block]!;
        return (
          <div
            class="print-placed"
            key={placed.block}
            style={{ top: `${placed.top}px`, height: `${placed.height}px` }}
          >
            {laid.block.kind === 'picture' ? (
              <PictureView
                block={laid.block}
                laid={laid}
                counter={counter}
                address={pictures.get(laid.block.pictureId)}
              />
            ) : (
              <Parts {...{ placed, laid, counter, cell }} />
            )}
          </div>
        );
      })}
    </div>
  );
}

interface PartsProps {
  placed: Placed;
  laid: LaidBlock;
  counter: SidesCounter;
  cell: Shown['cell'];
}

function Parts({ placed: { from, to }, laid, counter, cell }: PartsProps) {
  const { block, parts, cells } = laid;
  if (block.kind === 'picture') return null;
  return (
    <>
      {parts.slice(from, to).map((height, index) => {
        const part = from + index;
        const all = cells[part]!;
        return (
          <PartView
            key={part}
            block={block}
            look={counter.look}
            cells={cell === null ? all : [all[cell]!]}
            isFirst={part === 0}
            isLast={part === parts.length - 1}
            formulas={counter.formulas}
            height={height}
          />
        );
      })}
    </>
  );
}

interface PictureProps {
  block: PictureBlock;
  laid: LaidBlock;
  counter: SidesCounter;
  address: string | undefined;
}

function PictureView({ block, laid, counter, address }: PictureProps) {
  const { width, height } = laid.size!;
  const { frame, look } = counter;
  const left = look === 'strip' ? frame.columnWidth * LEADS_WIDTH + DEPTH_WIDTH : block.depth * DEPTH_WIDTH;
  const style = { width: `${width}px`, height: `${height}px`, marginLeft: `${left}px` };
  return <img src={address} alt={block.alt} style={style} decoding="sync" />;
}

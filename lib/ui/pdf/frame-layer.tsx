import { useLayoutEffect, useRef } from 'preact/hooks';
import { type PageSize, frameBetween, moved, sized } from '#lib/capture/pdf/frame.ts';
import type { Rect } from '#lib/capture/pdf/place.ts';
import { t } from '../text.ts';
import { boxStyle } from './box-style.ts';

/** The frame that the student draws, and what to do with it. */
export interface Framing {
  page: number;
  rect: Rect;
  change(page: number, rect: Rect): void;
  keep(page: number, rect: Rect): void;
}

interface FrameLayerProps {
  number: number;
  size: PageSize;
  scale: number;
  framing: Framing;
}

/** A pointer that moved less than this was no drag: the click sets a corner, the next one the corner across. */
const STILL = 4;
/** How far an arrow key goes, in points; with Ctrl a single one. */
const STEP = 12;

interface Corner {
  x: number;
  y: number;
}

/** Lies over a page while a frame is drawn: by dragging, by two clicks, or by the arrow keys. */
export function FrameLayer({ number, size, scale, framing }: FrameLayerProps) {
  const start = useRef<Corner | null>(null);
  const isDown = useRef(false);
  const at = (event: PointerEvent): Corner => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    return { x: (event.clientX - box.left) / scale, y: (event.clientY - box.top) / scale };
  };
  const isStill = (a: Corner, b: Corner) => Math.hypot(a.x - b.x, a.y - b.y) * scale < STILL;
  return (
    <div
      class="pdf-frame-layer"
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.preventDefault();
        event.currentTarget.setPointerCapture(event.pointerId);
        isDown.current = true;
        start.current ??= at(event);
      }}
      onPointerMove={(event) => {
        if (start.current) framing.change(number, frameBetween(start.current, at(event), size));
      }}
      onPointerUp={(event) => {
        const corner = start.current;
        if (!corner || !isDown.current) return;
        isDown.current = false;
        if (isStill(corner, at(event))) return;
        start.current = null;
        framing.keep(number, frameBetween(corner, at(event), size));
      }}
    >
      {framing.page === number && (
        <FrameBox size={size} scale={scale} rect={framing.rect} framing={framing} />
      )}
    </div>
  );
}

type FrameBoxProps = Omit<FrameLayerProps, 'number'> & { rect: Rect };

const ARROWS: Readonly<Record<string, [right: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

function FrameBox({ size, scale, rect, framing }: FrameBoxProps) {
  const box = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => box.current!.focus({ preventScroll: true }), []);
  return (
    <button
      class="pdf-frame"
      ref={box}
      style={boxStyle(rect, scale)}
      aria-label={t('pdfFrameThis')}
      aria-describedby="pdf-frame-how"
      onClick={() => framing.keep(framing.page, rect)}
      onKeyDown={(event) => {
        const arrow = ARROWS[event.key];
        if (!arrow || event.altKey || event.metaKey) return;
        event.preventDefault();
        const [right, down] = arrow.map((way) => way * (event.ctrlKey ? 1 : STEP)) as [number, number];
        framing.change(framing.page, (event.shiftKey ? sized : moved)(rect, right, down, size));
        box.current!.scrollIntoView({ block: 'nearest' });
      }}
    />
  );
}

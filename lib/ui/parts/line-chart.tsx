import { scaleLinear, scaleUtc } from 'd3-scale';
import { curveLinear, curveStepAfter, line } from 'd3-shape';
import type { Judgement } from '#lib/model/attempt.ts';
import { MARK_PATHS } from './mark.tsx';
import { useWidth } from './use-width.ts';

/** A point: a moment in epoch ms, and a part from 0 to 1. */
export interface Point {
  at: number;
  part: number;
}

interface LineChartProps {
  /** What it shows, in a sentence, for who does not see it. */
  label: string;
  points: readonly Point[];
  /** Moments marked on the line: attempts, by how they were judged. */
  dots?: readonly (Point & { judgement: Judgement })[];
  /** First and last moment of the axis. */
  from: number;
  to: number;
  /** A moment marked by an upright line with a word. */
  mark?: { at: number; word: string } | undefined;
  /** The value holds until the next point, instead of changing evenly. */
  isStepped?: boolean;
}

const HEIGHT = 200;
const LEFT = 44;
const RIGHT = 12;
const TOP = 12;
const BOTTOM = 26;

/** A part of a whole over time: axes by d3-scale, the line by d3-shape. Days are named in the student's language. */
export function LineChart({ label, points, dots = [], from, to, mark, isStepped = false }: LineChartProps) {
  const { box, width } = useWidth<HTMLDivElement>(640);
  // A course of one day still has an axis.
  const x = scaleUtc([from, Math.max(to, from + 86_400_000)], [LEFT, width - RIGHT]);
  const y = scaleLinear([0, 1], [HEIGHT - BOTTOM, TOP]);
  const path = line<Point>(
    ({ at }) => x(at),
    ({ part }) => y(part),
  ).curve(isStepped ? curveStepAfter : curveLinear)(points);
  return (
    <div class="chart" ref={box}>
      <svg width={width} height={HEIGHT} role="img" aria-label={label}>
        {[0, 0.25, 0.5, 0.75, 1].map((part) => (
          <g key={part}>
            <line class="grid" x1={LEFT} x2={width - RIGHT} y1={y(part)} y2={y(part)} />
            <text class="tick" x={LEFT - 6} y={y(part) + 4} text-anchor="end">
              {part.toLocaleString(undefined, { style: 'percent' })}
            </text>
          </g>
        ))}
        {x.ticks(Math.max(2, Math.floor(width / 120))).map((at) => (
          <text key={at.getTime()} class="tick" x={x(at)} y={HEIGHT - 8} text-anchor="middle">
            {at.toLocaleDateString(undefined, { day: 'numeric', month: 'short' })}
          </text>
        ))}
        {mark && mark.at <= to && (
          <g>
            <line class="mark-line" x1={x(mark.at)} x2={x(mark.at)} y1={TOP} y2={HEIGHT - BOTTOM} />
            <text class="tick" x={x(mark.at) - 4} y={TOP + 10} text-anchor="end">
              {mark.word}
            </text>
          </g>
        )}
        <path class="curve" d={path ?? ''} />
        {dots.map(({ at, part, judgement }, place) => (
          <g key={place} transform={`translate(${x(at)} ${y(part)})`}>
            <circle class="dot" r="7" />
            <path class="mark" transform="translate(-7 -7) scale(0.7)" d={MARK_PATHS[judgement]} />
          </g>
        ))}
      </svg>
    </div>
  );
}

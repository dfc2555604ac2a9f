import { scaleBand, scaleLinear } from 'd3-scale';
import { useWidth } from './use-width.ts';

interface BarChartProps {
  /** What it shows, in a sentence, for who does not see it. */
  label: string;
  /** A bar each: `name` stands below it where there is room. */
  bars: readonly { name: string; count: number }[];
}

const HEIGHT = 120;
const LEFT = 34;
const TOP = 10;
const BOTTOM = 22;
/** A name takes about so many pixels. */
const NAME_WIDTH = 56;

/** Counts as bars. */
export function BarChart({ label, bars }: BarChartProps) {
  const { box, width } = useWidth<HTMLDivElement>(480);
  const x = scaleBand(
    bars.map((_, place) => place),
    [LEFT, width],
  ).padding(0.2);
  const most = Math.max(1, ...bars.map(({ count }) => count));
  const y = scaleLinear([0, most], [HEIGHT - BOTTOM, TOP]).nice(3);
  const every = Math.max(1, Math.ceil(NAME_WIDTH / x.step()));
  const last = bars.length - 1;
  // Counted from the last, which is the one that is looked for; its name ends at the side and takes more room.
  const isNamed = (place: number) =>
    place === last || ((last - place) % every === 0 && x(place)! < width - 2 * NAME_WIDTH);
  return (
    <div class="chart" ref={box}>
      <svg width={width} height={HEIGHT} role="img" aria-label={label}>
        {y
          .ticks(3)
          .filter(Number.isInteger)
          .map((count) => (
            <g key={count}>
              <line class="grid" x1={LEFT} x2={width} y1={y(count)} y2={y(count)} />
              <text class="tick" x={LEFT - 6} y={y(count) + 4} text-anchor="end">
                {count}
              </text>
            </g>
          ))}
        {bars.map(({ name, count }, place) => (
          <g key={place}>
            <rect
              class="bar"
              x={x(place)}
              y={y(count)}
              width={x.bandwidth()}
              height={HEIGHT - BOTTOM - y(count)}
            />
            {isNamed(place) && (
              <text
                class="tick"
                x={place === last ? width : x(place)! + x.bandwidth() / 2}
                y={HEIGHT - 6}
                text-anchor={place === last ? 'end' : 'middle'}
              >
                {name}
              </text>
            )}
          </g>
        ))}
      </svg>
    </div>
  );
}

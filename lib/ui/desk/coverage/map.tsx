import { useMemo, useRef, useState } from 'preact/hooks';
import type { Topic } from '#lib/model/topic.ts';
import type { TopicCoverage } from '#lib/syllabus/coverage.ts';
import { topicName } from '../../parts/topic-name.ts';
import { useWidth } from '../../parts/use-width.ts';
import { percent, t } from '../../text.ts';
import { linkTo } from '../route.ts';
import { fitWords } from './fit-words.ts';
import { type Group, type Tile, levelOf, mapOf } from './map-layout.ts';

/** Width of a letter and height of a line, roughly, in CSS pixels: what does not fit is left to the table. */
const LETTER = 7;
const BOLD_LETTER = 8.5;
const LINE = 18;
const INSET = 6;

/** Narrow windows get a higher map, so that its tiles stay readable. */
const heightFor = (width: number): number => (width < 500 ? 420 : 300);

interface MapProps {
  topics: readonly Topic[];
  rows: readonly TopicCoverage[];
}

/** The syllabus as a map: area is share of the exam, hatching is how much is secured. One stop for Tab. */
export function CoverageMap({ topics, rows }: MapProps) {
  const { box, width } = useWidth<HTMLElement>(800);
  const height = heightFor(width);
  const { tiles, groups } = useMemo(
    () => mapOf(topics, rows, { width, height }),
    [topics, rows, width, height],
  );
  const map = useRef<SVGSVGElement>(null);
  const [at, setAt] = useState(0);
  const move = (event: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    const next = step && map.current!.querySelectorAll('a')[at + step];
    if (!next) return;
    event.preventDefault();
    next.focus();
  };
  return (
    <figure class="map" ref={box}>
      <figcaption class="row">
        <strong>{t('mapTitle')}</strong> <span class="soft">{t('mapHint')}</span>
      </figcaption>
      <svg
        ref={map}
        viewBox={`0 0 ${width} ${height}`}
        height={height}
        role="group"
        aria-label={t('mapTitle')}
        onKeyDown={move}
      >
        <Patterns />
        {groups.map((group) => (
          <GroupName key={group.topic.id} group={group} />
        ))}
        {tiles.map((tile, index) => (
          <MapTile key={tile.topic.id} tile={tile} isStop={index === at} onFocus={() => setAt(index)} />
        ))}
      </svg>
      <Legend />
    </figure>
  );
}

/** Lines that stand the closer the more is secured; drawn in every map and legend under the same names. */
function Patterns() {
  return (
    <defs>
      {[14, 9, 5].map((gap, index) => (
        <pattern
          key={gap}
          id={`secured-${index + 1}`}
          width={gap}
          height={gap}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect class="hatch" width="2" height={gap} />
        </pattern>
      ))}
    </defs>
  );
}

/** The fill of a level: nothing, a pattern, or all of it. */
function Fill({ level, ...place }: { level: number; x: number; y: number; width: number; height: number }) {
  return (
    <>
      <rect class="ground" {...place} />
      {level > 0 && level < 4 && <rect fill={`url(#secured-${level})`} {...place} />}
      {level === 4 && <rect class="hatch" {...place} />}
    </>
  );
}

interface MapTileProps {
  tile: Tile;
  isStop: boolean;
  onFocus(): void;
}

function MapTile({ tile, isStop, onFocus }: MapTileProps) {
  const { left, top, width, height, row, topic } = tile;
  const name = topicName(topic);
  const told = t('mapTile', name, percent(row.share), percent(row.securedPart));
  const lines = linesOf(tile);
  return (
    <a href={linkTo(`topic/${topic.id}`)} tabindex={isStop ? 0 : -1} onFocus={onFocus}>
      <title>{told}</title>
      <Fill level={levelOf(row.securedPart)} x={left} y={top} width={width} height={height} />
      {lines.map((line, index) => (
        <text
          key={index}
          aria-hidden="true"
          class={line.isAmount ? 'amount' : ''}
          x={left + INSET}
          y={top + (index + 1) * LINE}
        >
          {line.words}
        </text>
      ))}
    </a>
  );
}

/** The name, or its code where that is all there is room for, and below it how much is secured. */
function linesOf({ topic, row, width, height }: Tile): { words: string; isAmount: boolean }[] {
  const letters = Math.floor((width - 2 * INSET) / LETTER);
  const room = Math.floor((height - INSET) / LINE);
  const amount =
    row.securedPart > 0 ? fitWords(percent(row.securedPart), letters, Math.max(0, room - 1)) : [];
  const left = room - amount.length;
  const full = fitWords(topicName(topic), letters, left);
  const isCode = full.length === 0 || full[0] === `${topic.code}…`;
  const name = isCode ? fitWords(topic.code, letters, left) : full;
  return [
    ...name.map((words) => ({ words, isAmount: false })),
    ...amount.map((words) => ({ words, isAmount: true })),
  ];
}

function GroupName({ group: { left, top, width, topic } }: { group: Group }) {
  return (
    <text class="group-name" x={left + 2} y={top + 15} aria-hidden="true">
      {fitWords(topicName(topic), Math.floor(width / BOLD_LETTER), 1)[0] ?? topic.code}
    </text>
  );
}

const LEVELS = ['mapNone', 'mapThird', 'mapTwoThirds', 'mapMost', 'mapAll'] as const;

function Legend() {
  return (
    <ul class="map-legend soft">
      {LEVELS.map((name, level) => (
        <li key={name}>
          <svg width="22" height="14" aria-hidden="true">
            <Fill level={level} x={0.5} y={0.5} width={21} height={13} />
          </svg>
          {t(name)}
        </li>
      ))}
    </ul>
  );
}

import { type Figure, figure } from './figure.ts';
import { comparison, type Mean } from './simulation/compare.ts';
import { EXPONENTIAL_LAW, type Law, POWER_LAW } from './simulation/laws.ts';

const RUNS = 200;

/** The part of the marks still missing under the best fixed order that has to be won. */
const TO_WIN = 0.1;

/** Marks on exam day of simulated students who forget by other laws than the model's, against fixed orders. */
export function figures(): Figure[] {
  return [marks('recall/marks-power-law', POWER_LAW), marks('recall/marks-exponential-law', EXPONENTIAL_LAW)];
}

function marks(name: string, law: Law): Figure {
  const { policies, ours, best, ofMissing } = comparison(law, RUNS);
  console.log(
    `  ${law.name}, ${RUNS} students, % of the marks: ${policies.map((p) => `${p.name} ${inPercent(p.marks)}`).join(', ')}`,
  );
  console.log(`  of the marks missing under "${best.name}" ${inPercent(ofMissing)} % are won`);
  // Points more, rounded up: the rounding makes it no easier.
  const least = Math.ceil(1000 * TO_WIN * (1 - best.marks.mean)) / 10;
  return figure({
    name,
    value: 100 * ours.mean,
    unit: '%',
    against: { what: `best fixed order (${best.name})`, value: 100 * best.marks.mean },
    goal: { atLeast: least, more: true },
  });
}

const inPercent = ({ mean, within }: Mean) => `${(100 * mean).toFixed(1)} ± ${(100 * within).toFixed(1)}`;

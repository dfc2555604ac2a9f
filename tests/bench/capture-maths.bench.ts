import { MathMLToLaTeX } from 'mathml-to-latex';
import { normaliseMathml } from '#lib/capture/maths/normalise-mathml.ts';
import { texToMathml } from '#lib/capture/maths/tex-to-mathml.ts';
import corpus from '#tests/data/formulas.json' with { type: 'json' };
import { cameBack, normalOfTex, roundTrips } from '../unit/capture/maths/round-trip.ts';
import { type Formula, TYPESETTERS, orNull } from '../unit/capture/maths/typesetters.ts';
import { type Figure, brief } from './figure.ts';

const { formulas } = corpus;

const GOAL = 98;

/**
 * How many of the formulas of tests/data/formulas.json come back from a page of each kind through a selection: once,
 * and the same by TeX and by MathML. One that a typesetter refuses counts as lost.
 */
export async function figures(): Promise<Figure[]> {
  const all: Figure[] = [];
  for (const { name, typeset } of TYPESETTERS) {
    const trips = roundTrips(await typeset(formulas), formulas);
    all.push(share(name, trips.filter(cameBack).length, name === 'native-mathml' ? libraryAlone() : null));
  }
  return all;
}

function share(name: string, count: number, library: number | null): Figure {
  const value = percent(count);
  return {
    name: `capture/maths-round-trip-${name}`,
    value,
    unit: '%',
    against: library === null ? null : `mathml-to-latex ${brief(library)} %`,
    ratio: library === null ? null : Number((value / library).toPrecision(3)),
    goal: `at least ${GOAL} %`,
    met: value >= GOAL,
  };
}

const percent = (count: number): number => Number(((100 * count) / formulas.length).toPrecision(4));

/** The same from MathML to TeX and back with a published library in the place of ours. */
function libraryAlone(): number {
  return percent(formulas.filter(comesBackByLibrary).length);
}

function comesBackByLibrary(formula: Formula): boolean {
  const made = texToMathml(formula);
  if ('error' in made) return false;
  const bare = made.mathml.replace(/<annotation[\s\S]*?<\/annotation>/, '');
  const tex = orNull(() => MathMLToLaTeX.convert(bare));
  return tex !== null && normalOfTex({ ...formula, tex }) === normaliseMathml(bare);
}

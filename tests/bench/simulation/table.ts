// Prints the table of docs/method.md: node tests/bench/simulation/table.ts [runs] [first seed] [development]
import { comparison, type Mean } from './compare.ts';
import { ALL_AGES_LAW, DEVELOPMENT_LAWS, EXPONENTIAL_LAW, HALF_LIFE_LAW, POWER_LAW } from './laws.ts';

const [runs = 200, firstSeed = 1] = process.argv.slice(2, 4).map(Number);
const laws =
  process.argv[4] === 'development'
    ? DEVELOPMENT_LAWS
    : [POWER_LAW, EXPONENTIAL_LAW, HALF_LIFE_LAW, ALL_AGES_LAW];

const inPercent = ({ mean, within }: Mean) => `${(100 * mean).toFixed(1)} ± ${(100 * within).toFixed(1)}`;

for (const even of [false, true]) {
  for (const law of laws) {
    const { policies, ahead, ofMissing, best } = comparison(law, runs, firstSeed, even);
    const cells = policies.map(({ marks }) => inPercent(marks)).join(' | ');
    console.log(
      `| ${law.name}${even ? ', even' : ''} | ${cells} | ${best.name} | ${inPercent(ahead)} | ${inPercent(ofMissing)} |`,
    );
  }
}

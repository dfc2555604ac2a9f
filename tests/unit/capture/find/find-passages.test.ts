// @vitest-environment jsdom
import { describe, expect, it } from 'vitest';
import { describeRange } from '#lib/capture/find/describe-range.ts';
import { findPassages } from '#lib/capture/find/find-passages.ts';
import { rangeOver, show } from '../select.ts';

const SEAS = [
  'Cold water sinks',
  'Warm water spreads',
  'A long swell arrives',
  'Slack water ends',
  'Ice drifts south',
];
const PLACES = [
  'beyond the outer bank',
  'under the northern cliffs',
  'along the river mouth',
  'over the sill',
];
const lines = SEAS.flatMap((sea) => PLACES.map((place) => `${sea} ${place}.`));
const PAGE = lines.map((line, index) => `<p id="p${index}">${line}</p>`);

function clipsOf(...ids: number[]) {
  show(PAGE.join(''));
  return ids.map((id) => ({ id, selectors: describeRange(rangeOver(`#p${id}`), document.body) }));
}

/** A clock that moves on by so much whenever it is read. */
function paceOf(tick: number) {
  const pace = { time: 0, pauses: 0, now: () => (pace.time += tick), pause: async () => void pace.pauses++ };
  return pace;
}

describe('findPassages', () => {
  it('gives each clip in its turn, with null for one that is gone', async () => {
    const clips = clipsOf(3, 7, 12);
    document.querySelector('#p7')!.remove();
    document.querySelector('#p12')!.id = 'moved';
    const given: [number, string | undefined][] = [];
    for await (const { wanted, found } of findPassages(document.body, clips, paceOf(0)))
      given.push([wanted.id, found?.range.toString()]);
    expect(given).toEqual([
      [3, lines[3]],
      [7, undefined],
      [12, lines[12]],
    ]);
  });

  it('pauses when its budget is spent, and not before', async () => {
    const pausesAt = async (tick: number): Promise<number> => {
      const pace = { ...paceOf(tick), budget: 10 };
      let pauses = 0;
      const pause = async () => void pauses++;
      for await (const _ of findPassages(document.body, clipsOf(1, 2, 3, 4), { ...pace, pause }));
      return pauses;
    };
    expect(await pausesAt(0)).toBe(0);
    expect(await pausesAt(20)).toBeGreaterThanOrEqual(4);
  });

  it('reads no page for no clips', async () => {
    const untouched = {} as Node;
    for await (const _ of findPassages(untouched, [], paceOf(1))) expect.unreachable();
  });
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  askedIn,
  filterOf,
  filtersSet,
  NOTHING_ASKED,
  pathOf,
  withoutFilters,
} from '#lib/ui/search/asked.ts';
import { deep, shallow, tides, waves } from '../a-course.ts';

test('what is asked goes into the address and comes out of it again', () => {
  const aDay = fc.constantFrom('', '2026-01-31');
  const anAsked = fc.record({
    text: fc.string({ unit: 'binary', maxLength: 400 }).map((text) => text.toWellFormed()),
    topicId: fc.constantFrom('', deep.id),
    sourceId: fc.constantFrom('', deep.id),
    isUnclear: fc.boolean(),
    since: aDay,
    until: aDay,
    isEveryCourse: fc.boolean(),
  });
  fc.assert(
    fc.property(anAsked, (asked) => {
      expect(askedIn(`#/${pathOf(asked)}`)).toEqual(asked);
    }),
  );
});

test('an address of nothing asks nothing; a long text is cut, a torn sign mended', () => {
  expect(askedIn('#/search')).toEqual(NOTHING_ASKED);
  expect(pathOf(NOTHING_ASKED)).toBe('search');
  expect(pathOf({ ...NOTHING_ASKED, text: 'x'.repeat(10_000) })).toHaveLength('search?q='.length + 500);
  expect(() => pathOf({ ...NOTHING_ASKED, text: '🌊'.repeat(400).slice(1) })).not.toThrow();
});

test('a topic comes with all below it; days begin and end at midnight here', () => {
  const filter = filterOf({ ...NOTHING_ASKED, topicId: waves.id, since: '2026-03-02', until: '2026-03-02' }, [
    waves,
    deep,
    shallow,
    tides,
  ]);
  expect(filter).toEqual({
    topicIds: new Set([waves.id, deep.id, shallow.id]),
    sourceId: null,
    isUnclear: false,
    since: new Date(2026, 2, 2).getTime(),
    before: new Date(2026, 2, 3).getTime(),
  });
  expect(filterOf({ ...NOTHING_ASKED, since: 'soon' }, []).since).toBeNull();
});

test('limits are counted and dropped without the text', () => {
  const asked = { ...NOTHING_ASKED, text: 'tide', isUnclear: true, since: '2026-03-02', isEveryCourse: true };
  expect(filtersSet(asked)).toBe(2);
  expect(withoutFilters(asked)).toEqual({ ...NOTHING_ASKED, text: 'tide', isEveryCourse: true });
});

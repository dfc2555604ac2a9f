import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildTopicIndex, suggestTopics } from '#lib/syllabus/match/index.ts';
import type { TopicIndex } from '#lib/syllabus/match/index.ts';
import { aTopic, newId } from '#tests/unit/builders.ts';

const topics = ['Surface waves', 'Tides', 'Coriolis effect', 'Sea ice'].map((title, order) =>
  aTopic({ title, order }),
);
const off = aTopic({ title: 'Sonar', order: 9, off: true });
const TEXTS = [
  'The swash is what rushes up the beach when a breaker collapses.',
  'Brine drains from young ice and leaves it fresher than the water it froze from.',
  'At the quadratures the pull of the sun works against that of the moon.',
  'A parcel that moves north turns to the right; the swash does not care.',
  'Foam, foam and more foam on the beach.',
];
const PASSAGES = ['The swash reached the ice.', 'The pull of the moon on the beach', 'Fresher water', 'ω'];

const built = (tagged: { topicId: string; text: string }[]) =>
  buildTopicIndex({ topics: [...topics, off], statements: [], tagged });
const chances = (index: TopicIndex) =>
  PASSAGES.map((text) => {
    const { suggestions, offSyllabus } = suggestTopics({ text, headings: [], title: '' }, index);
    const byTopic = suggestions.map(({ topicId, chance }) => [topicId, Number(chance.toFixed(4))]);
    return { byTopic: Object.fromEntries(byTopic) as Record<string, number>, offSyllabus };
  });

const aTag = fc.record({
  topicId: fc.constantFrom(...topics.map(({ id }) => id)),
  text: fc.constantFrom(...TEXTS),
});

describe('TopicIndex', () => {
  it('learns from passages one by one as it does from all at once', () => {
    fc.assert(
      fc.property(fc.array(aTag, { maxLength: 8 }), (tags) => {
        const index = built([]);
        for (const tag of tags) index.tag(tag);
        expect(chances(index)).toEqual(chances(built(tags)));
      }),
    );
  });

  it('forgets what is no longer tagged', () => {
    fc.assert(
      fc.property(fc.array(aTag, { maxLength: 4 }), fc.array(aTag, { maxLength: 4 }), (kept, gone) => {
        const index = built([...gone, ...kept]);
        for (const tag of gone) index.untag(tag);
        expect(chances(index)).toEqual(chances(built(kept)));
      }),
    );
  });

  it('learns at once', () => {
    const index = built([]);
    const chanceOf = (topicId: string) =>
      suggestTopics({ text: 'Foam on the beach', headings: [], title: '' }, index).suggestions.find(
        (suggestion) => suggestion.topicId === topicId,
      )?.chance ?? 0;
    const before = chanceOf(topics[0]!.id);
    index.tag({ topicId: topics[0]!.id, text: TEXTS[4]! });
    expect(chanceOf(topics[0]!.id)).toBeGreaterThan(Math.max(before, 0.5));
  });

  it('passes over what is tagged to a topic that is off or gone', () => {
    const index = built([]);
    for (const topicId of [off.id, newId()]) index.tag({ topicId, text: TEXTS[0]! });
    expect(chances(index)).toEqual(chances(built([])));
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Topic } from '#lib/model/topic.ts';
import { buildTopicIndex, suggestTopics } from '#lib/syllabus/match/index.ts';
import { aTopic, newId } from '#tests/unit/builders.ts';

let order = 0;
const topicOf = (title: string, over: Partial<Topic> = {}): Topic =>
  aTopic({ title, order: order++, ...over });
const statementOf = (topic: Topic, text: string) => ({
  id: newId(),
  courseId: topic.courseId,
  topicId: topic.id,
  order: order++,
  code: '',
  text,
  group: '',
  off: false,
  createdAt: 0,
  changedAt: 0,
});

const waves = topicOf('Surface waves');
const dispersion = topicOf('Dispersion of deep-water waves', { parentId: waves.id });
const breaking = topicOf('Breaking', { parentId: waves.id });
const tides = topicOf('Tides');
const springs = topicOf('Spring and neap tides', { parentId: tides.id });
const rotation = topicOf('Coriolis effect');
const old = topicOf('Sea ice', { off: true });
const topics = [waves, dispersion, breaking, tides, springs, rotation, old];
const statements = [
  statementOf(dispersion, 'State the dispersion relation \\(\\omega^2 = gk\\tanh(kh)\\).'),
  statementOf(dispersion, 'Explain why long waves outrun short ones.'),
  statementOf(breaking, 'Describe spilling and plunging breakers.'),
  statementOf(springs, 'Relate the tidal range to the phase of the moon.'),
  statementOf(rotation, 'Calculate the Coriolis parameter at a latitude.'),
];
const index = buildTopicIndex({ topics, statements, tagged: [] });

const match = (
  text: string,
  over: { headings?: string[]; title?: string; limit?: number } = {},
  among = index,
) => suggestTopics({ text, headings: over.headings ?? [], title: over.title ?? '' }, among, over.limit);
const firstOf = (...args: Parameters<typeof match>) => match(...args).suggestions[0];

describe('suggestTopics', () => {
  it('finds the topic that a passage speaks of, and says by which words', () => {
    const first = firstOf('In deep water the dispersion relation says that long waves travel faster.');
    expect(first?.topicId).toBe(dispersion.id);
    expect(first?.terms.slice(0, 2)).toEqual(['dispersion relation', 'long waves']);
    expect(first?.terms.length).toBeLessThanOrEqual(4);
    expect(firstOf('At full moon the tidal range is greatest.')?.topicId).toBe(springs.id);
  });

  it('finds a topic by its formula, in whatever notation', () => {
    for (const formula of ['\\(\\omega = \\sqrt{gk \\tanh kh}\\)', 'ω² = gk tanh(kh)', 'omega squared']) {
      expect(firstOf(formula)?.topicId).toBe(dispersion.id);
    }
    expect(firstOf('ω² = g k')?.terms).toEqual(['ω']);
  });

  it('goes by what a statement is about, not by its command', () => {
    expect(match('A steady state.').suggestions).toEqual([]);
  });

  it('shows words as they stand in the passage', () => {
    expect(firstOf('Plunging BREAKERS curl over.')?.terms).toEqual(['Plunging BREAKERS']);
  });

  it('lets headings and the page title weigh more than the text', () => {
    const text = 'The parameter grows with latitude.';
    expect(firstOf(text)?.topicId).toBe(rotation.id);
    expect(firstOf(text, { headings: ['Spring tides', 'Neap tides'], title: 'Tidal range' })?.topicId).toBe(
      springs.id,
    );
  });

  it('learns from passages that are tagged already', () => {
    const text = 'Foam rushes up the beach in the swash.';
    expect(match(text).suggestions).toEqual([]);
    const tagged = [{ topicId: breaking.id, text: 'The swash is what rushes up the beach.' }];
    expect(firstOf(text, {}, buildTopicIndex({ topics, statements, tagged }))?.topicId).toBe(breaking.id);
  });

  it('prefers a leaf where a parent ties, and can suggest a parent', () => {
    const parent = topicOf('Currents');
    const leaf = topicOf('Currents', { parentId: parent.id });
    const two = buildTopicIndex({ topics: [parent, leaf, tides], statements: [], tagged: [] });
    expect(match('ocean currents', {}, two).suggestions.map(({ topicId }) => topicId)).toEqual([
      leaf.id,
      parent.id,
    ]);
    expect(match('surface waves').suggestions.map(({ topicId }) => topicId)).toContain(waves.id);
  });

  it('never suggests a topic that is off', () => {
    expect(match('sea ice', {}).suggestions).toEqual([]);
  });

  it('passes over a statement that is off', () => {
    const off = statements.map((statement) => ({ ...statement, off: statement.topicId === breaking.id }));
    const without = buildTopicIndex({ topics, statements: off, tagged: [] });
    const chanceFor = (among: typeof index) =>
      match('plunging breakers', {}, among).suggestions.find(({ topicId }) => topicId === breaking.id)
        ?.chance;
    expect(chanceFor(index)).toBeGreaterThan(0.9);
    expect(chanceFor(without) ?? 0).toBeLessThan(chanceFor(index)!);
  });

  it('says when a passage looks off the syllabus', () => {
    const off =
      'The treaty was signed after long talks between the two parliaments, and trade grew in both kingdoms.';
    expect(match(off).offSyllabus).toBe(true);
    expect(match('The Coriolis parameter depends on latitude.').offSyllabus).toBe(false);
  });

  it('has nothing to say on nothing', () => {
    const nothing = { suggestions: [], offSyllabus: false };
    expect(match('')).toEqual(nothing);
    expect(match('and of the')).toEqual(nothing);
    expect(match('waves', {}, buildTopicIndex({ topics: [], statements: [], tagged: [] }))).toEqual(nothing);
  });

  it('gives at most as many as asked for, five unless told', () => {
    const all = Array.from({ length: 8 }, (_, i) => topicOf(`Waves ${'abcdefgh'[i] ?? ''}`));
    const many = buildTopicIndex({ topics: all, statements: [], tagged: [] });
    expect(match('waves', {}, many).suggestions).toHaveLength(5);
    expect(match('waves', { limit: 2 }, many).suggestions).toHaveLength(2);
  });

  it('gives chances that fall, and add up to no more than 1, whatever the passage', () => {
    const word = fc.constantFrom(
      'waves',
      'tides',
      'moon',
      'breakers',
      'ω',
      'the',
      'treaty',
      '.',
      '\\tanh',
      'spring',
    );
    fc.assert(
      fc.property(fc.array(word), fc.string(), (words, noise) => {
        const { suggestions } = match(`${words.join(' ')} ${noise}`);
        const chances = suggestions.map(({ chance }) => chance);
        expect(chances).toEqual(chances.toSorted((a, b) => b - a));
        expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeLessThanOrEqual(1 + 1e-9);
        expect(chances.every((chance) => chance > 0 && chance <= 1)).toBe(true);
      }),
    );
  });
});

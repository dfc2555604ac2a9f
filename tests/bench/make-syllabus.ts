import { type Clip, NEW_CLIP } from '#lib/model/clip.ts';
import { type Line, NEW_LINE, type Question } from '#lib/model/item.ts';
import { NEW_TOPIC, type Statement, type Topic } from '#lib/model/topic.ts';
import { Random } from './random.ts';
import { Words } from './words.ts';

const NOW = Date.UTC(2026, 2, 2, 8);
const BELOW_EACH = 24;
const STATEMENTS_EACH = 3;

const NO_TIER = { group: '', off: false };

/** Makes a syllabus of topics with topics below them, and what a student hangs on it. The same in every run. */
export class SyllabusMaker {
  readonly topics: Topic[] = [];
  readonly statements: Statement[] = [];
  /** Topics that have none below them. */
  readonly leaves: Topic[] = [];
  readonly #random = new Random(2);
  readonly #words = new Words(this.#random);
  readonly #courseId = this.#random.id();

  /** @param count how many topics, those above others included */
  constructor(count: number) {
    let parentId: string | null = null;
    for (let order = 0; order < count; order++) {
      const isTop = order % (BELOW_EACH + 1) === 0;
      const place = { parentId: isTop ? null : parentId, order, code: String(order + 1), share: null };
      const topic: Topic = {
        ...this.#kept(),
        ...place,
        title: this.text(4),
        ...NO_TIER,
        unit: 'parts',
        ...NEW_TOPIC,
      };
      this.topics.push(topic);
      if (isTop) parentId = topic.id;
      else this.leaves.push(topic);
    }
    for (const { id: topicId } of this.leaves) {
      for (let order = 0; order < STATEMENTS_EACH; order++) {
        this.statements.push({
          ...this.#kept(),
          topicId,
          order,
          code: '',
          text: `Explain ${this.text(12)}`,
          ...NO_TIER,
        });
      }
    }
  }

  text(words: number): string {
    return this.#words.text(words);
  }

  clips(count: number, wordsEach: number): Clip[] {
    return Array.from({ length: count }, () => {
      const text = this.text(wordsEach);
      return {
        ...this.#kept(),
        sourceId: this.#random.id(),
        topicIds: [this.#leaf()],
        text,
        html: `<p>${text}</p>`,
        ownWords: this.#random.next() < 0.5 ? this.text(20) : '',
        unclear: this.#random.next() < 0.1,
        headings: [this.text(4)],
        selectors: [{ type: 'TextQuoteSelector' as const, exact: text }],
        pictureIds: [],
        ...NEW_CLIP,
      };
    });
  }

  questions(count: number): Question[] {
    return Array.from({ length: count }, () => ({
      ...this.#kept(),
      topicId: this.#leaf(),
      clipId: null,
      statementIds: [],
      prompt: `${this.text(10)}?`,
      answer: this.text(20),
      marks: 1,
      lineId: null,
    }));
  }

  lines(count: number): Line[] {
    return Array.from({ length: count }, (_, order) => ({
      ...this.#kept(),
      topicId: this.#leaf(),
      clipId: null,
      ...NEW_LINE,
      lead: this.text(5),
      rest: this.text(10),
      order,
    }));
  }

  /** A syllabus as it is pasted: numbered in three levels, with statements and a share here and there. */
  outline(lineCount: number): string {
    const lines: string[] = [];
    for (let i = 0; lines.length < lineCount; i++) {
      const [top, sub, last] = [1 + Math.floor(i / 64), 1 + (Math.floor(i / 8) % 8), i % 8];
      if (i % 64 === 0) lines.push(`${top} ${this.text(4)} (${5 + this.#random.below(10)}%)`);
      else if (last === 0) lines.push(`  ${top}.${sub} ${this.text(5)}`);
      else lines.push(`    ${top}.${sub}.${last} Explain ${this.text(12)}`);
    }
    return lines.join('\n');
  }

  #leaf(): string {
    return this.#random.pick(this.leaves).id;
  }

  #kept() {
    return { id: this.#random.id(), courseId: this.#courseId, createdAt: NOW, changedAt: NOW };
  }
}

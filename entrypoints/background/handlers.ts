import { browser } from 'wxt/browser';
import { passageKey } from '#lib/capture/same-passage.ts';
import type { Clip } from '#lib/model/clip.ts';
import type { SlipTopic } from '#lib/model/message.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Topic } from '#lib/model/topic.ts';
import { changeClip, clipsFrom, keepClip } from '#lib/store/actions/clips.ts';
import { readSettings } from '#lib/store/actions/courses.ts';
import { onChange } from '#lib/store/changes.ts';
import { openDeck } from '#lib/store/open.ts';
import { readBy, readOne } from '#lib/store/read.ts';
import type { Db } from '#lib/store/schema.ts';
import { buildTopicIndex, suggestTopics, type TopicIndex } from '#lib/syllabus/match/index.ts';
import type { Handlers } from './messages.ts';
import { openSlip } from './open-slip.ts';

/** The deck's connection and the topic index, made when first needed and dropped when they no longer hold. */
function deckKeeper() {
  let deck: Promise<Db> | undefined;
  let index: { courseId: string; made: Promise<TopicIndex> } | undefined;
  onChange(({ stores }) => {
    if (stores.some((store) => ['topics', 'statements', 'clips'].includes(store))) index = undefined;
  }, new AbortController().signal);
  const open = async (): Promise<Db> => {
    deck ??= openDeck({ onClosed: () => (deck = undefined) });
    // A failure may pass (disk full, another window upgrading): the next message tries again.
    deck.catch(() => (deck = undefined));
    return deck;
  };
  const topicIndex = async (db: Db, courseId: string): Promise<TopicIndex> => {
    if (index?.courseId !== courseId) index = { courseId, made: readTopicIndex(db, courseId) };
    return index.made;
  };
  return { open, topicIndex };
}

async function readTopicIndex(db: Db, courseId: string): Promise<TopicIndex> {
  const [topics, statements, clips] = await Promise.all([
    readBy(db, 'topics', 'course', courseId),
    readBy(db, 'statements', 'course', courseId),
    readBy(db, 'clips', 'course', courseId),
  ]);
  const tagged = clips.flatMap((clip) => clip.topicIds.map((topicId) => ({ topicId, text: clip.text })));
  return buildTopicIndex({ topics, statements, tagged });
}

/** Topics in reading order with their depth, those that are off left out. */
function listTopics(topics: Topic[]): SlipTopic[] {
  const byId = new Map(topics.map((topic) => [topic.id, topic]));
  const depthOf = (topic: Topic, seen = 0): number => {
    const parent = topic.parentId === null ? undefined : byId.get(topic.parentId);
    return parent && seen < 20 ? 1 + depthOf(parent, seen + 1) : 0;
  };
  return topics
    .filter((topic) => !topic.off)
    .sort((a, b) => a.order - b.order)
    .map((topic) => ({ id: topic.id, code: topic.code, title: topic.title, depth: depthOf(topic) }));
}

const isPassage = (text: string) => {
  const key = passageKey(text);
  return (clip: Clip) => passageKey(clip.text) === key;
};

/** The background's answers to every message. */
export function deckHandlers(): Handlers {
  const { open, topicIndex } = deckKeeper();
  return {
    async readSlip({ text, headings, page }) {
      const db = await open();
      const settings = await readSettings(db);
      const course = settings.courseId === null ? undefined : await readOne(db, 'courses', settings.courseId);
      if (!course) return null;
      const [topics, index, clips] = await Promise.all([
        readBy(db, 'topics', 'course', course.id),
        topicIndex(db, course.id),
        clipsFrom(db, page.url, course.id),
      ]);
      const match = suggestTopics({ text, headings, title: page.title }, index, 5);
      const kept = clips.find(isPassage(text));
      const listed = listTopics(topics);
      return {
        courseId: course.id,
        courseName: course.name,
        topics: listed,
        suggestions: match.suggestions.map(({ topicId, terms }) => ({ topicId, terms })),
        offSyllabus: match.offSyllabus,
        // A topic that a newer syllabus dropped is no longer aimed at.
        aimedTopicId: listed.find(({ id }) => id === settings.aimedTopicId)?.id ?? null,
        kept: kept
          ? { clipId: kept.id, topicIds: kept.topicIds, ownWords: kept.ownWords, unclear: kept.unclear }
          : null,
      };
    },
    async keepClip({ passage, page, ...draft }) {
      const db = await open();
      const course = await readOne(db, 'courses', draft.courseId);
      if (!course) throw new StudentError('errorCourseGone');
      const clip = await keepClip(db, { ...draft, ...passage }, page, isPassage(passage.text), Date.now());
      return { clipId: clip.id };
    },
    async changeClip({ clipId, ...decision }) {
      const clip = await changeClip(await open(), clipId, decision, Date.now());
      return { clipId: clip.id };
    },
    async openDesk({ path }) {
      await browser.tabs.create({ url: browser.runtime.getURL(`/desk.html#/${path}`) });
      return null;
    },
    async clipTab({ tabId }) {
      await openSlip(tabId);
      return null;
    },
  };
}

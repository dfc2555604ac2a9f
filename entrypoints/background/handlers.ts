import { browser } from 'wxt/browser';
import { completeMaths } from '#lib/capture/maths/complete-maths.ts';
import type { SlipTopic } from '#lib/model/message.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Topic } from '#lib/model/topic.ts';
import { changeClip, clipsFrom, keepClip } from '#lib/store/actions/clips.ts';
import { readSettings } from '#lib/store/actions/courses.ts';
import { openDeck } from '#lib/store/open.ts';
import { readBy, readOne } from '#lib/store/read.ts';
import type { Db } from '#lib/store/schema.ts';
import { takeOpened } from '#lib/ui/opened.ts';
import { suggestTopics } from '#lib/syllabus/match/index.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import type { Handlers } from './messages.ts';
import { momentsAmong, sameAs } from './moments.ts';
import { topicIndexKeeper } from './topic-index-keeper.ts';
import { addScript, openSlip, showFramed } from './open-slip.ts';
import { provenanceOf } from './provenance.ts';
import { pictureOf, takePictures } from './pictures.ts';

/** The deck's connection, made when first needed. */
function deckKeeper() {
  let deck: Promise<Db> | undefined;
  return async (): Promise<Db> => {
    deck ??= openDeck({ onClosed: () => (deck = undefined) });
    // A failure may pass (disk full, another window upgrading): the next message tries again.
    deck.catch(() => (deck = undefined));
    return deck;
  };
}

/** Topics in reading order with their depth, those that are off and what stands below them left out. */
function listTopics(topics: Topic[]): SlipTopic[] {
  const byId = new Map(topics.map((topic) => [topic.id, topic]));
  const depthOf = (topic: Topic, seen = 0): number => {
    const parent = topic.parentId === null ? undefined : byId.get(topic.parentId);
    return parent && seen < 20 ? 1 + depthOf(parent, seen + 1) : 0;
  };
  return activeTopics(topics).map((topic) => ({
    id: topic.id,
    code: topic.code,
    title: topic.title,
    depth: depthOf(topic),
  }));
}

/** A topic that is less likely is not suggested on the slip. */
const LEAST_CHANCE = 0.01;

/** The background's answers to every message. */
export function deckHandlers(): Handlers {
  const open = deckKeeper();
  const topicIndex = topicIndexKeeper();
  return {
    async readSlip({ text, headings, page, ...telling }) {
      const db = await open();
      const settings = await readSettings(db);
      const course = settings.courseId === null ? undefined : await readOne(db, 'courses', settings.courseId);
      if (!course) return null;
      const [topics, index, clips] = await Promise.all([
        readBy(db, 'topics', 'course', course.id),
        topicIndex.of(db, course.id),
        clipsFrom(db, page.url, course.id),
      ]);
      const match = suggestTopics({ text, headings, title: page.title }, index, 5);
      const kept = clips.find(sameAs({ text, ...telling }));
      const listed = listTopics(topics);
      return {
        courseId: course.id,
        courseName: course.name,
        topics: listed,
        suggestions: match.suggestions.filter(({ chance }) => chance >= LEAST_CHANCE),
        offSyllabus: match.offSyllabus,
        moments: momentsAmong(clips),
        // A topic that a newer syllabus dropped is no longer aimed at.
        aimedTopicId: listed.find(({ id }) => id === settings.aimedTopicId)?.id ?? null,
        kept: kept
          ? { clipId: kept.id, topicIds: kept.topicIds, ownWords: kept.ownWords, unclear: kept.unclear }
          : null,
      };
    },
    async keepClip({ passage, page, pictures, framed, ...draft }, sender) {
      const [db, stated] = await Promise.all([open(), provenanceOf(sender)]);
      const course = await readOne(db, 'courses', draft.courseId);
      if (!course) throw new StudentError('errorCourseGone');
      const clip = await topicIndex.learning(() =>
        keepClip(
          db,
          { ...draft, ...completeMaths(passage), pictures: pictures.map(pictureOf) },
          { ...page, ...stated },
          sameAs({ text: passage.text, selectors: draft.selectors, framed }),
          Date.now(),
        ),
      );
      return { clipId: clip.id };
    },
    async changeClip({ clipId, ...decision }) {
      const db = await open();
      const clip = await topicIndex.learning(() => changeClip(db, clipId, decision, Date.now()));
      return { clipId: clip.id };
    },
    async clipsHere({ url }, sender) {
      // A page learns of its own clips only.
      if (new URL(url).origin !== new URL(sender.url!).origin) throw new StudentError('errorPageAddress');
      const [clips, openedId] = await Promise.all([clipsFrom(await open(), url), takeOpened(url)]);
      return { clips: clips.map(({ id, selectors }) => ({ clipId: id, selectors })), openedId };
    },
    async addReader(_nothing, { tab, frameId = 0 }) {
      const target = { tabId: tab!.id!, frameIds: [frameId] };
      await browser.scripting.executeScript({ target, files: ['/readable.js'] });
      return null;
    },
    async openDesk({ path }) {
      await browser.tabs.create({ url: browser.runtime.getURL(`/desk.html#/${path}`) });
      return null;
    },
    takePictures: ({ parts }, { tab }) => takePictures(tab, parts),
    addScript: ({ script }, { tab }) => addScript(tab, script),
    showFramed: (_, { tab }) => showFramed(tab),
    async clipTab({ tabId, wish }) {
      await openSlip(tabId, wish);
      return null;
    },
  };
}

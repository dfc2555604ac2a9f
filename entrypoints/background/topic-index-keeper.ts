import type { Clip } from '#lib/model/clip.ts';
import { onChange } from '#lib/store/changes.ts';
import { readBy } from '#lib/store/read.ts';
import type { Db } from '#lib/store/schema.ts';
import { buildTopicIndex, type TopicIndex } from '#lib/syllabus/match/index.ts';

interface Held {
  index: TopicIndex;
  /** What the index learnt each clip under, by the clip's id. */
  topicsOf: Map<string, readonly string[]>;
}

/**
 * The topic index of the course asked for last: made when first needed, taught each clip that is kept from here, and
 * dropped when anything else changes what it is made of.
 */
export function topicIndexKeeper() {
  let held: { courseId: string; made: Promise<Held> } | undefined;
  /** Own writes of clips of which the news is still to come. */
  let expected = 0;
  onChange(({ stores }) => {
    const touched = stores.some((store) => store === 'topics' || store === 'statements');
    const clips = stores.includes('clips');
    if (touched || (clips && expected === 0)) held = undefined;
    else if (clips) expected -= 1;
  }, new AbortController().signal);

  const learn = async (clip: Clip): Promise<void> => {
    if (held?.courseId !== clip.courseId) return;
    const { index, topicsOf } = await held.made;
    // The index may have been made before or after the clip was written: what it knows of the clip goes first.
    for (const topicId of topicsOf.get(clip.id) ?? []) index.untag({ topicId, text: clip.text });
    for (const topicId of clip.topicIds) index.tag({ topicId, text: clip.text });
    topicsOf.set(clip.id, clip.topicIds);
  };

  return {
    async of(db: Db, courseId: string): Promise<TopicIndex> {
      if (held?.courseId !== courseId) held = { courseId, made: readIndex(db, courseId) };
      return (await held.made).index;
    },
    /** Carries out a write of one clip, and no other, and teaches the index what came of it. */
    async learning(write: () => Promise<Clip>): Promise<Clip> {
      expected += 1;
      let clip: Clip;
      try {
        clip = await write();
      } catch (error) {
        expected = Math.max(0, expected - 1);
        throw error;
      }
      await learn(clip);
      return clip;
    },
  };
}

async function readIndex(db: Db, courseId: string): Promise<Held> {
  const [topics, statements, clips] = await Promise.all([
    readBy(db, 'topics', 'course', courseId),
    readBy(db, 'statements', 'course', courseId),
    readBy(db, 'clips', 'course', courseId),
  ]);
  const tagged = clips.flatMap((clip) => clip.topicIds.map((topicId) => ({ topicId, text: clip.text })));
  return {
    index: buildTopicIndex({ topics, statements, tagged }),
    topicsOf: new Map(clips.map((clip) => [clip.id, clip.topicIds])),
  };
}

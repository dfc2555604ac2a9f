import { useId } from 'preact/hooks';
import { type Lesson, LessonKind } from '#lib/model/lesson.ts';
import type { Topic } from '#lib/model/topic.ts';
import { topicName } from '../../parts/topic-name.ts';
import { t } from '../../text.ts';

export type LessonDraft = Pick<Lesson, 'topicId' | 'kind' | 'title' | 'held' | 'wantedFrom' | 'wantedBy'>;

export const KIND_NAMES = {
  lesson: 'lessonKindLesson',
  sheet: 'lessonKindSheet',
  homework: 'lessonKindHomework',
} as const satisfies Record<LessonKind, string>;

interface FieldsProps {
  draft: LessonDraft;
  set(draft: LessonDraft): void;
  /** Topics to choose from; none where the topic is given. */
  topics: Topic[];
  titleRef?: { current: HTMLInputElement | null };
}

/** The fields of a lesson, sheet or homework in one line. */
export function LessonFields({ draft, set, topics, titleRef }: FieldsProps) {
  const id = useId();
  const change = (part: Partial<LessonDraft>) => set({ ...draft, ...part });
  return (
    <div class="row-fields lesson-fields">
      {topics.length > 0 && (
        <div class="field grow">
          <label for={`${id}-topic`}>{t('topic')}</label>
          <select
            id={`${id}-topic`}
            value={draft.topicId}
            onChange={(event) => change({ topicId: event.currentTarget.value })}
          >
            {topics.map((topic) => (
              <option key={topic.id} value={topic.id}>
                {topicName(topic)}
              </option>
            ))}
          </select>
        </div>
      )}
      <div class="field">
        <label for={`${id}-kind`}>{t('lessonKind')}</label>
        <select
          id={`${id}-kind`}
          value={draft.kind}
          onChange={(event) => change({ kind: event.currentTarget.value as LessonKind })}
        >
          {LessonKind.options.map((kind) => (
            <option key={kind} value={kind}>
              {t(KIND_NAMES[kind])}
            </option>
          ))}
        </select>
      </div>
      <div class="field grow">
        <label for={`${id}-title`}>{t('lessonTitle')}</label>
        <input
          id={`${id}-title`}
          ref={titleRef ?? null}
          required
          maxLength={300}
          autocomplete="off"
          value={draft.title}
          onInput={(event) => change({ title: event.currentTarget.value })}
        />
      </div>
      <label class="check">
        <input
          type="checkbox"
          checked={draft.held}
          onChange={(event) => change({ held: event.currentTarget.checked })}
        />
        {t('lessonHeld')}
      </label>
      <div class="field grow">
        <label for={`${id}-from`}>{t('lessonFrom')}</label>
        <input
          id={`${id}-from`}
          maxLength={200}
          autocomplete="off"
          value={draft.wantedFrom}
          onInput={(event) => change({ wantedFrom: event.currentTarget.value })}
        />
      </div>
      <div class="field">
        <label for={`${id}-by`}>{t('lessonBy')}</label>
        <input
          id={`${id}-by`}
          type="date"
          value={draft.wantedBy ?? ''}
          onInput={(event) => change({ wantedBy: event.currentTarget.value || null })}
        />
      </div>
    </div>
  );
}

import { useState } from 'preact/hooks';
import { type Moment, parseMoment } from '#lib/capture/links/media-fragment.ts';
import { writeTime } from '#lib/capture/moment/time.ts';
import type { KeptMoment } from '#lib/model/message.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { type TextName, t, tell } from '../text.ts';
import { type Times, faultOf, timeIn } from './times.ts';

interface MomentFieldsProps {
  first: Times;
  duration: number;
  kept: KeptMoment[];
  change(times: Times): void;
  go(moment: Moment): void;
}

/** The times of a moment, and the way to those of the same video that were kept before. */
export function MomentFields({ first, duration, kept, change, go }: MomentFieldsProps) {
  const exact = first.start as number;
  const [from, setFrom] = useState(writeTime(exact));
  const [to, setTo] = useState('');
  const times = (start: string, end: string): Times => ({
    start: timeIn(start, exact),
    end: end.trim() === '' ? null : timeIn(end, null),
  });
  const fault = faultOf(times(from, to), duration);
  const field = (id: string, label: TextName, value: string, set: (text: string) => void) => (
    <div class="field">
      <label for={id}>{t(label)}</label>
      <input
        id={id}
        class="time"
        inputmode="text"
        autocomplete="off"
        value={value}
        aria-describedby="time-fault"
        aria-invalid={fault !== null}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </div>
  );
  return (
    <>
      <fieldset class="field">
        <legend class="unseen">{t('momentTimes')}</legend>
        <div class="row times">
          {field('moment-from', 'momentFrom', from, (text) => {
            setFrom(text);
            change(times(text, to));
          })}
          {field('moment-to', 'momentTo', to, (text) => {
            setTo(text);
            change(times(from, text));
          })}
        </div>
        <p id="time-fault" class={fault ? 'trouble' : 'soft'} role="status">
          {fault ? tell(new StudentError(...fault)) : t('momentHint')}
        </p>
      </fieldset>
      {kept.length > 0 && <KeptMoments kept={kept} go={go} />}
    </>
  );
}

function KeptMoments({ kept, go }: Pick<MomentFieldsProps, 'kept' | 'go'>) {
  return (
    <section class="field">
      <h3>{t('momentsKept')}</h3>
      <ul class="found">
        {kept.map(({ clipId, fragment, text }) => {
          const moment = parseMoment(fragment)!;
          const { start, end } = moment;
          const time =
            end === undefined ? writeTime(start) : t('momentStretch', writeTime(start), writeTime(end));
          return (
            <li key={clipId}>
              <button type="button" class="plain" onClick={() => go(moment)}>
                {t('momentGo', time)}
              </button>{' '}
              <span class="soft">{text.length > 80 ? `${text.slice(0, 79)}…` : text}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

import { useState } from 'preact/hooks';
import { type OutlineRemark, isLeftOut } from '#lib/syllabus/outline-row.ts';
import { t, tn } from '../../text.ts';
import { type Counted, remarkText } from './remark-text.ts';

interface RemarksProps {
  remarks: OutlineRemark[];
  counted: Counted;
  /** Lines that were taken in by hand, by their place. */
  taken: ReadonlySet<number>;
  takeIn(remark: OutlineRemark): void;
}

/** What was understood by a guess only, and what was left out, each with why. */
export function Remarks({ remarks, counted, taken, takeIn }: RemarksProps) {
  const out = remarks.filter((remark) => isLeftOut(remark) && !taken.has(remark.line));
  const guesses = remarks.filter((remark) => !isLeftOut(remark));
  return (
    <>
      {guesses.length > 0 && (
        <details class="remark">
          <summary>{tn('remarks', guesses.length)}</summary>
          <RemarkList remarks={guesses} counted={counted} />
        </details>
      )}
      {out.length > 0 && (
        <details class="remark">
          <summary>{tn('leftOut', out.length)}</summary>
          <RemarkList remarks={out} counted={counted} takeIn={takeIn} />
        </details>
      )}
    </>
  );
}

const SHOWN_AT_FIRST = 20;

function RemarkList({ remarks, counted, takeIn }: Omit<RemarksProps, 'taken' | 'takeIn'> & TakeIn) {
  const [all, setAll] = useState(false);
  return (
    <>
      <ul class="plain-list remarks">
        {(all ? remarks : remarks.slice(0, SHOWN_AT_FIRST)).map((remark) => (
          <li key={`${remark.line} ${remark.about}`}>
            {remarkText(remark, counted)}
            {remark.text && (
              <span class="row">
                <q>{remark.text.length > SHOWN ? `${remark.text.slice(0, SHOWN)} …` : remark.text}</q>
                {takeIn && (
                  <button
                    class="plain"
                    aria-label={t('takeInNamed', remark.text.slice(0, SHOWN))}
                    onClick={() => takeIn(remark)}
                  >
                    {t('takeIn')}
                  </button>
                )}
              </span>
            )}
          </li>
        ))}
      </ul>
      {!all && remarks.length > SHOWN_AT_FIRST && (
        <button class="plain" onClick={() => setAll(true)}>
          {t('remarksAll', remarks.length)}
        </button>
      )}
    </>
  );
}

interface TakeIn {
  takeIn?: RemarksProps['takeIn'];
}

/** As much of a line as is shown, in characters. */
const SHOWN = 140;

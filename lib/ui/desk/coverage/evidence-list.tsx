import type { Evidence } from '#lib/syllabus/coverage.ts';
import type { Judgement } from '#lib/model/attempt.ts';
import { Mark } from '../../parts/mark.tsx';
import { t } from '../../text.ts';

interface Piece {
  judgement: Judgement;
  text: string;
}

/** Full where it is all there, part where some is, none where nothing is. */
export const judge = (there: number, wanted: number): Judgement =>
  there <= 0 ? 'none' : there >= wanted ? 'full' : 'part';

function piecesOf(evidence: Evidence): Piece[] {
  const { clips, understood, unclear, sources, questions, lines, attempted, secured, lessons, lessonsHeld } =
    evidence;
  const items = questions + lines;
  const { statements, explained } = evidence.answered;
  return [
    ...(lessons > 0
      ? [{ judgement: judge(lessonsHeld, lessons), text: t('evidenceLessons', lessonsHeld, lessons) }]
      : []),
    { judgement: judge(sources, 2), text: t('evidenceSources', sources) },
    { judgement: judge(understood, clips), text: t('evidenceUnderstood', understood, clips) },
    ...(unclear > 0 ? [{ judgement: 'none' as const, text: t('evidenceUnclear', unclear) }] : []),
    ...(statements > 0
      ? [{ judgement: judge(explained, statements), text: t('evidenceExplained', explained, statements) }]
      : []),
    { judgement: judge(questions, 1), text: t('evidenceQuestions', questions) },
    { judgement: judge(lines, 1), text: t('evidenceLines', lines) },
    { judgement: judge(attempted, items), text: t('evidenceAttempted', attempted, items) },
    { judgement: judge(secured, items), text: t('evidenceSecured', secured, items) },
  ];
}

/** The evidence of a topic, ticked and crossed like a marked script. A topic with none says so in one line. */
export function EvidenceList({ evidence }: { evidence: Evidence }) {
  if (evidence.clips + evidence.questions + evidence.lines + evidence.lessons === 0)
    return (
      <p class="row nowrap evidence-none">
        <Mark judgement="none" /> {t('evidenceNothing')}
      </p>
    );
  return (
    <ul class="evidence">
      {piecesOf(evidence).map(({ judgement, text }) => (
        <li key={text}>
          <Mark judgement={judgement} /> {text}
          <span class="unseen">
            {judgement === 'full' ? '' : ` (${t(judgement === 'part' ? 'partThere' : 'missing')})`}
          </span>
        </li>
      ))}
    </ul>
  );
}

import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { SlipState } from '#lib/model/message.ts';
import { send } from '../send.ts';
import { Notice } from '../slip/notice.tsx';
import { type Decision, Slip } from '../slip/slip.tsx';
import { t, tell } from '../text.ts';
import type { PdfSubject } from './subject.ts';

interface SlipPanelProps {
  subject: PdfSubject;
  leave(): void;
}

/** The slip beside a PDF: the same as beside a page, in the reader's own side. */
export function SlipPanel({ subject, leave }: SlipPanelProps) {
  const [state, setState] = useState<SlipState | null | undefined>();
  const [trouble, setTrouble] = useState<string | null>(null);
  const before = useRef(document.activeElement);
  const panel = useRef<HTMLElement>(null);
  useEffect(() => {
    const { passage, headings, page } = subject;
    send('readSlip', { text: passage.text, headings, page }).then(
      // Two frames may have the same words under them: a frame is a clip of its own.
      (state) => setState(state && subject.pictures.length > 0 ? { ...state, kept: null } : state),
      (error: unknown) => setTrouble(tell(error)),
    );
  }, [subject]);
  const openDesk = (path: string) =>
    void send('openDesk', { path }).then(leave, (error: unknown) => setTrouble(tell(error)));
  useLayoutEffect(
    () => () => {
      if (before.current instanceof HTMLElement && before.current.isConnected)
        before.current.focus({ preventScroll: true });
    },
    [],
  );
  return (
    <section
      class="pdf-slip"
      ref={panel}
      role="dialog"
      aria-label={t('extName')}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.isComposing) return;
        event.stopPropagation();
        leave();
      }}
    >
      {trouble !== null && <Notice text={trouble} leave={leave} />}
      {state === null && trouble === null && (
        <Notice
          text={t('slipNoCourse')}
          action={{ label: t('slipStartCourse'), run: () => openDesk('course') }}
          leave={leave}
        />
      )}
      {state && trouble === null && (
        <Slip
          state={state}
          passage={subject.preview}
          keep={(decision) => keep(subject, state, decision)}
          openDesk={openDesk}
          leave={leave}
        />
      )}
    </section>
  );
}

function keep(subject: PdfSubject, state: SlipState, decision: Decision): Promise<{ clipId: string }> {
  if (state.kept) return send('changeClip', { clipId: state.kept.clipId, ...decision });
  const { passage, headings, selectors, pictures, page } = subject;
  return send('keepClip', {
    courseId: state.courseId,
    passage,
    headings,
    selectors,
    pictures,
    page,
    ...decision,
  });
}

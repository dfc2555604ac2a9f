import { render } from 'preact';
import { allowOnly } from '#lib/capture/allow-only.ts';
import type { SlipState } from '#lib/model/message.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Wish } from '#lib/model/wish.ts';
import { send } from '../send.ts';
import { t, tell } from '../text.ts';
import { Notice } from './notice.tsx';
import { type SlipHost, raiseHost } from './host.ts';
import { bringWidener } from './parts/bring-widener.ts';
import type { Widen } from './parts/use-scope.ts';
import { Slip, type SlipProps } from './slip.tsx';
import { SUBJECTS, type Subject, showPictures } from './subject.ts';

/** Opens the slip on what the student wishes to keep, or says why it cannot. A slip that is open already goes. */
export async function openSlip(doc: Document, wish: Wish): Promise<void> {
  const host = raiseHost(doc);
  const leave = () => host.leave();
  const say = (text: string) => {
    render(<Notice text={text} leave={leave} />, host.sheet);
    host.place();
  };
  try {
    if (doc.contentType === 'application/pdf') return say(t('errorPagePdf'));
    const subject = await SUBJECTS[wish](doc);
    host.beside(subject.place);
    // A copy: the selection may change while the slip is open.
    const range = subject.isSelection ? doc.getSelection()!.getRangeAt(0).cloneRange() : null;
    const state = await send('readSlip', {
      text: subject.passage.text,
      headings: subject.headings,
      page: subject.page,
      selectors: subject.selectors,
      framed: subject.framed,
    });
    if (state) show(doc, host, subject, state, range && bringWidener({ doc, range, page: subject.page }));
    else askForCourse(host);
  } catch (error) {
    say(tell(error));
  }
}

function show(doc: Document, host: SlipHost, subject: Subject, state: SlipState, widen: Widen | null): void {
  const keep: SlipProps['keep'] = async (decision, widened, kept) => {
    const fault = subject.fault?.();
    if (fault) throw new StudentError(...fault);
    if (kept) return send('changeClip', { clipId: kept.clipId, ...decision });
    const { passage, headings, selectors, pictures } = widened?.content() ?? subject;
    return send('keepClip', {
      courseId: state.courseId,
      passage,
      headings,
      selectors,
      pictures,
      page: subject.page,
      framed: subject.framed,
      ...decision,
    });
  };
  const refresh = () => show(doc, host, subject, state, widen);
  const more = (into: HTMLElement) => subject.more?.(into, { state, leave: () => host.leave(), refresh });
  render(
    <Slip
      state={state}
      passage={allowOnly(subject.passage.html, doc)}
      showPictures={(root) => showPictures(subject, root)}
      more={subject.more && more}
      widen={widen}
      keep={keep}
      openDesk={(path) => void send('openDesk', { path })}
      leave={() => host.leave()}
    />,
    host.sheet,
  );
  host.place();
}

function askForCourse(host: SlipHost): void {
  const open = () => {
    void send('openDesk', { path: 'course' });
    host.leave();
  };
  render(
    <Notice
      text={t('slipNoCourse')}
      action={{ label: t('slipStartCourse'), run: open }}
      leave={() => host.leave()}
    />,
    host.sheet,
  );
  host.place();
}

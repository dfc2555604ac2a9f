import { render } from 'preact';
import { allowOnly } from '#lib/capture/allow-only.ts';
import type { SlipState } from '#lib/model/message.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Wish } from '#lib/model/wish.ts';
import { send } from '../send.ts';
import { t, tell } from '../text.ts';
import { Notice, type NoticeProps } from './notice.tsx';
import { type SlipHost, raiseHost } from './host.ts';
import { bringWidener } from './parts/bring-widener.ts';
import type { Widen } from './parts/use-scope.ts';
import { Slip, type SlipProps } from './slip.tsx';
import { SUBJECTS, type Subject, showPictures } from './subject.ts';

/** Opens the slip on what the student wishes to keep, or says why it cannot. A slip that is open already goes. */
export async function openSlip(doc: Document, wish: Wish): Promise<void> {
  const host = raiseHost(doc);
  const leave = () => host.leave();
  const say = (text: string, action?: NoticeProps['action']) => {
    render(<Notice text={text} action={action} leave={leave} />, host.sheet);
    host.place();
  };
  const openDesk = (path: string) =>
    void send('openDesk', { path }).then(leave, (error: unknown) => say(tell(error)));
  try {
    if (doc.contentType === 'application/pdf') return say(t('errorPagePdf'));
    const subject = await SUBJECTS[wish](doc);
    host.beside(subject.place);
    const { selected, page } = subject;
    const state = await send('readSlip', {
      text: subject.passage.text,
      headings: subject.headings,
      page,
      selectors: subject.selectors,
      framed: subject.framed,
    });
    const widen = selected ? bringWidener({ ...selected, page }) : null;
    if (state) show({ doc, host, openDesk }, subject, state, widen);
    else say(t('slipNoCourse'), { label: t('slipStartCourse'), run: () => openDesk('course') });
  } catch (error) {
    say(tell(error), wayIntoFrame(error, leave));
  }
}

/** A frame of another site can be opened by itself, and its text kept there. */
function wayIntoFrame(error: unknown, leave: () => void): NoticeProps['action'] {
  if (!(error instanceof StudentError) || error.message !== 'errorSelectionInFrame') return undefined;
  const [address = ''] = error.values;
  if (!/^https?:/.test(address)) return undefined;
  const run = () => {
    open(address, '_blank', 'noopener');
    leave();
  };
  return { label: t('slipOpenFrame'), run };
}

interface Place {
  doc: Document;
  host: SlipHost;
  openDesk(path: string): void;
}

function show(place: Place, subject: Subject, state: SlipState, widen: Widen | null): void {
  const { doc, host, openDesk } = place;
  const keep: SlipProps['keep'] = async (decision, widened, kept) => {
    const fault = subject.fault?.();
    if (fault) throw new StudentError(...fault);
    if (kept) return send('changeClip', { clipId: kept.clipId, ...decision });
    const { passage, headings, selectors, pictures } = (await widened?.content()) ?? subject;
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
  const refresh = () => show(place, subject, state, widen);
  const more = (into: HTMLElement) => subject.more?.(into, { state, leave: () => host.leave(), refresh });
  render(
    <Slip
      state={state}
      passage={allowOnly(subject.passage.html, doc)}
      showPictures={(root) => showPictures(subject, root)}
      more={subject.more && more}
      widen={widen}
      keep={keep}
      openDesk={openDesk}
      leave={() => host.leave()}
    />,
    host.sheet,
  );
  host.place();
}

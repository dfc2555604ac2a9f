import { render } from 'preact';
import { allowOnly } from '#lib/capture/allow-only.ts';
import { type Capture, readSelection } from '#lib/capture/read-selection.ts';
import type { SlipState } from '#lib/model/message.ts';
import { send } from '../send.ts';
import { t, tell } from '../text.ts';
import { Notice } from './notice.tsx';
import { type SlipHost, raiseHost } from './host.ts';
import { type Decision, Slip } from './slip.tsx';

/** Opens the slip on what is selected in the document, or says why it cannot. A slip that is open already goes. */
export async function openSlip(doc: Document): Promise<void> {
  const host = raiseHost(doc);
  const leave = () => host.leave();
  const say = (text: string) => {
    render(<Notice text={text} leave={leave} />, host.sheet);
    host.place();
  };
  try {
    if (doc.contentType === 'application/pdf') return say(t('errorPagePdf'));
    const capture = readSelection(doc);
    host.beside(capture.range);
    const state = await send('readSlip', {
      text: capture.passage.text,
      headings: capture.headings,
      page: capture.page,
    });
    if (state) show(doc, host, capture, state);
    else askForCourse(host);
  } catch (error) {
    say(tell(error));
  }
}

function show(doc: Document, host: SlipHost, capture: Capture, state: SlipState): void {
  const keep = (decision: Decision) =>
    state.kept
      ? send('changeClip', { clipId: state.kept.clipId, ...decision })
      : send('keepClip', {
          courseId: state.courseId,
          passage: capture.passage,
          headings: capture.headings,
          selectors: capture.selectors,
          page: capture.page,
          ...decision,
        });
  render(
    <Slip
      state={state}
      passage={allowOnly(capture.passage.html, doc)}
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

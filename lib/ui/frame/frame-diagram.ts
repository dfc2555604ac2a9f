import { send } from '../send.ts';
import { drawFrame } from './draw-frame.ts';
import { framedSubject } from './framed-subject.ts';
import { leaveSubject } from './left-subject.ts';

/** Lets the student frame a part of the page, takes its picture and opens the slip on it. */
export async function frameDiagram(doc: Document): Promise<void> {
  const box = await drawFrame(doc);
  if (!box) return;
  await leaveSubject(() => framedSubject(doc, box));
  // Where the extension behind the page is gone, nobody is left to say so.
  await send('showFramed', {}).catch(() => undefined);
}

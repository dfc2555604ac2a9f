import type { MessageData, SlipState } from '#lib/model/message.ts';

/** What is kept instead of the selection: the section around it, or all that the page explains. */
export type Scope = 'section' | 'main';

/** A wider passage, as the student has left it. */
export interface Widened {
  scope: Scope;
  /** What is kept, its pictures read now. */
  content(): Promise<Pick<MessageData<'keepClip'>, 'passage' | 'headings' | 'selectors' | 'pictures'>>;
  /** Why it cannot be kept; null when it can. */
  problem: string | null;
  /** What the deck says of it; null while it has not answered. */
  state: SlipState | null;
}

/** Where the student selected something. */
export interface Selected {
  doc: Document;
  range: Range;
  page: MessageData<'readSlip'>['page'];
}

/**
 * Lays out the parts of a wider passage in `box`, with the focus on the first, and calls back with what will be kept:
 * at once, whenever the student drops a part or takes one back, and when the deck has said something of it. Gives what
 * to tell the student where it cannot.
 */
export type Widener = (
  selected: Selected,
  scope: Scope,
  box: HTMLElement,
  changed: (widened: Widened) => void,
) => string | null;

/** Where the readable script leaves its widener for the clip script, in the extension's own world of the page. */
export const WIDENER_KEY = 'plumblineWidener';

import base from '../base.css?inline';
import tokens from '../tokens.css?inline';
import style from './frame.css?inline';

const HOST = 'plumbline-frame';
/** The slip, which makes room for the frame. */
const SLIP = 'plumbline-slip';
const HEARD = [
  'click',
  'keydown',
  'keyup',
  'keypress',
  'pointerdown',
  'pointermove',
  'pointerup',
  'mousedown',
  'mouseup',
];

export interface Layer {
  root: HTMLElement;
  /** Aborted when the layer goes. */
  signal: AbortSignal;
  /** Takes the layer away and gives the focus back. */
  leave(): void;
}

/** Lays an empty layer over the window, in a closed shadow root. An older one goes, and so does an open slip. */
export function raiseLayer(doc: Document): Layer {
  for (const name of [HOST, SLIP]) {
    for (const old of doc.querySelectorAll(name)) old.dispatchEvent(new CustomEvent(name));
  }
  const closing = new AbortController();
  const { signal } = closing;
  const before = doc.activeElement;
  const view = doc.defaultView!;
  const host = doc.createElement(HOST);
  const shadow = host.attachShadow({ mode: 'closed' });
  shadow.adoptedStyleSheets = [tokens, base, style].map((text) => {
    const sheet = new view.CSSStyleSheet();
    sheet.replaceSync(text);
    return sheet;
  });
  const root = doc.createElement('div');
  root.className = 'layer';
  shadow.append(root);
  doc.documentElement.append(host);
  // What a script made is dropped on the way in; what the student does ends here.
  for (const type of HEARD) {
    shadow.addEventListener(type, dropMadeUp, { capture: true, signal });
    shadow.addEventListener(type, (event) => event.stopPropagation(), { signal });
  }
  const leave = () => {
    closing.abort();
    host.remove();
    if (before instanceof view.HTMLElement) before.focus({ preventScroll: true });
  };
  host.addEventListener(HOST, leave, { signal });
  return { root, signal, leave };
}

function dropMadeUp(event: Event): void {
  if (event.isTrusted) return;
  event.stopImmediatePropagation();
  event.preventDefault();
}

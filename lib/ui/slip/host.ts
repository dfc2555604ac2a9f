import { render } from 'preact';
import base from '../base.css?inline';
import tokens from '../tokens.css?inline';
import { t } from '../text.ts';
import { type Box, placeSlip } from './place.ts';
import style from './slip.css?inline';

const HOST = 'plumbline-slip';
/** Events that make something happen on the slip. The page can neither send nor overhear them. */
const ACTING = ['click', 'keydown', 'keyup', 'keypress', 'input', 'change', 'submit', 'beforeinput', 'paste'];

/** A page that will not have the slip at all is let be in the end. */
const MOST_RETURNS = 20;

export interface SlipHost {
  /** Where the slip is rendered. */
  sheet: HTMLElement;
  /** Remembers what the slip stands beside. */
  beside(place: () => Box): void;
  /** Puts the sheet where it belongs, after it was rendered. */
  place(): void;
  /** Takes the slip away and gives the focus back. */
  leave(): void;
}

/** Puts an empty slip into the page, in a closed shadow root that the page's styles and scripts cannot reach. */
export function raiseHost(doc: Document): SlipHost {
  for (const old of doc.querySelectorAll(HOST)) old.dispatchEvent(new CustomEvent(HOST));
  const closing = new AbortController();
  const { signal } = closing;
  const before = doc.activeElement;
  const host = doc.createElement(HOST);
  const shadow = host.attachShadow({ mode: 'closed' });
  const view = doc.defaultView!;
  shadow.adoptedStyleSheets = [tokens, base, style].map((text) => {
    const sheet = new view.CSSStyleSheet();
    sheet.replaceSync(text);
    return sheet;
  });
  const sheet = doc.createElement('div');
  sheet.className = 'sheet';
  sheet.setAttribute('role', 'dialog');
  sheet.setAttribute('aria-label', t('extName'));
  shadow.append(sheet);
  doc.documentElement.append(host);

  let standing = (): Box => ({ left: 0, top: 0, right: 0, bottom: 0 });
  const place = () => {
    const { left, top } = placeSlip(
      standing(),
      { width: sheet.offsetWidth, height: sheet.offsetHeight },
      { width: view.innerWidth, height: view.innerHeight },
    );
    sheet.style.left = `${left}px`;
    sheet.style.top = `${top}px`;
  };
  const leave = () => {
    closing.abort();
    render(null, sheet);
    host.remove();
    if (before instanceof view.HTMLElement) before.focus();
  };
  guard(shadow, signal);
  keepKeys(shadow, sheet, leave, signal);
  // A later slip in the same page asks this one to go.
  host.addEventListener(HOST, leave, { signal });
  view.addEventListener('resize', place, { signal });
  // The sheet grows and shrinks as topics are looked up.
  const watch = new view.ResizeObserver(place);
  watch.observe(sheet);
  signal.addEventListener('abort', () => watch.disconnect());
  stay(host, shadow, signal);
  return { sheet, beside: (where) => (standing = where), place, leave };
}

/** A page that writes itself anew may sweep the slip away, and with it what the student has typed: it comes back. */
function stay(host: HTMLElement, shadow: ShadowRoot, signal: AbortSignal): void {
  const doc = host.ownerDocument;
  let [focused, left] = [null as EventTarget | null, MOST_RETURNS];
  shadow.addEventListener('focusin', ({ target }) => (focused = target), { signal });
  const watch = new MutationObserver(() => {
    if (host.isConnected || left === 0) return;
    left--;
    doc.documentElement.append(host);
    (focused as HTMLElement | null)?.focus();
  });
  watch.observe(doc, { childList: true });
  watch.observe(doc.documentElement, { childList: true });
  signal.addEventListener('abort', () => watch.disconnect());
}

/** Events that a script made are dropped on the way in; those of the student end at the slip. */
function guard(shadow: ShadowRoot, signal: AbortSignal): void {
  for (const type of ACTING) {
    shadow.addEventListener(type, dropMadeUp, { capture: true, signal });
    shadow.addEventListener(type, (event) => event.stopPropagation(), { signal });
  }
}

function dropMadeUp(event: Event): void {
  if (event.isTrusted) return;
  event.stopImmediatePropagation();
  event.preventDefault();
}

/** Escape leaves; Tab goes round inside the slip. */
function keepKeys(shadow: ShadowRoot, sheet: HTMLElement, leave: () => void, signal: AbortSignal): void {
  sheet.addEventListener(
    'keydown',
    (event) => {
      if (event.key === 'Escape' && !event.isComposing) {
        // Leaving takes the guard away, which would have kept the key from the page.
        event.stopPropagation();
        leave();
      }
      if (event.key !== 'Tab') return;
      const stops = [
        ...sheet.querySelectorAll<HTMLElement>('button, input, textarea, [tabindex="0"]'),
      ].filter((stop) => !stop.hasAttribute('disabled'));
      const end = event.shiftKey ? stops[0] : stops.at(-1);
      if (shadow.activeElement !== end) return;
      event.preventDefault();
      (event.shiftKey ? stops.at(-1) : stops[0])?.focus();
    },
    { signal },
  );
}

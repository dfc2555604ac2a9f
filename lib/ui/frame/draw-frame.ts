import type { WindowBox } from '#lib/capture/pictures/size.ts';
import { t } from '../text.ts';
import { diagramAt, likelyBox } from './diagram-box.ts';
import { SMALLEST, between, moved, shownPart, within } from './frame-box.ts';
import { type Layer, raiseLayer } from './layer.ts';

/** A frame shorter than this on both sides was no drag but a press, in CSS pixels. */
const PRESS = 6;

interface Parts {
  frame: HTMLElement;
  how: HTMLElement;
  place: HTMLElement;
  keep: HTMLButtonElement;
  leave: HTMLButtonElement;
}

/**
 * Lets the student draw a frame over the window, by mouse, pen, finger or keyboard. Gives it in CSS pixels of the window
 * once it is to be kept, with the layer gone; null when the student leaves.
 */
export function drawFrame(doc: Document): Promise<WindowBox | null> {
  const layer = raiseLayer(doc);
  const view = doc.defaultView!;
  const parts = build(doc, layer.root);
  let box = likelyBox(doc);
  const window = () => ({ width: view.innerWidth, height: view.innerHeight });
  const show = (next: WindowBox) => {
    box = next;
    const { left, top, width, height } = box;
    Object.assign(parts.frame.style, {
      left: `${left}px`,
      top: `${top}px`,
      width: `${width}px`,
      height: `${height}px`,
    });
    parts.how.classList.toggle('below', top + height / 2 < view.innerHeight / 2);
  };
  show(box);
  parts.frame.focus({ preventScroll: true });
  return new Promise((done) => {
    const finish = (result: WindowBox | null) => {
      done(result);
      layer.leave();
    };
    // A later frame, or the slip, may take the layer away.
    layer.signal.addEventListener('abort', () => done(null));
    view.addEventListener('resize', () => show(within(box, window())), { signal: layer.signal });
    hearKeys(layer, parts, (event) => {
      if (event.key === 'Escape') return finish(null);
      if (event.key === 'Enter') return finish(box);
      const next = moved(box, event, window());
      if (!next) return;
      event.preventDefault();
      show(next);
      say(parts, next);
    });
    parts.keep.onclick = () => finish(box);
    parts.leave.onclick = () => finish(null);
    hearPointer(layer, parts, {
      draw: (drawn) => show(shownPart(drawn, window())),
      drawn: () => finish(box),
      press: (point) => {
        const whole = diagramAt(doc, point);
        if (whole) finish(whole);
      },
    });
  });
}

function say({ place }: Parts, { left, top, width, height }: WindowBox): void {
  place.textContent = t('framePlace', ...[left, top, width, height].map(Math.round));
}

function hearKeys({ root, signal }: Layer, parts: Parts, act: (event: KeyboardEvent) => void): void {
  root.addEventListener(
    'keydown',
    (event) => {
      const stops = [parts.frame, parts.keep, parts.leave];
      const at = stops.indexOf(event.target as HTMLElement);
      if (event.key === 'Tab') {
        event.preventDefault();
        stops.at((at + (event.shiftKey ? -1 : 1)) % stops.length)?.focus();
      } else if (event.key !== 'Enter' || at === 0) act(event);
    },
    { signal },
  );
}

interface Drawing {
  draw(box: WindowBox): void;
  drawn(): void;
  press(point: { x: number; y: number }): void;
}

function hearPointer({ root, signal }: Layer, { how, frame }: Parts, { draw, drawn, press }: Drawing): void {
  let from: { x: number; y: number } | null = null;
  // A drag may begin on the words, which give way to it, but not on a button.
  const isOnButton = (event: Event) => (event.target as Element).closest('button') !== null;
  const on = (type: string, hear: (event: PointerEvent) => void) =>
    root.addEventListener(type, (event) => hear(event as PointerEvent), { signal });
  const isDrag = ({ width, height }: WindowBox) => width >= PRESS || height >= PRESS;
  on('pointerdown', (event) => {
    if (event.button !== 0 || isOnButton(event)) return;
    event.preventDefault();
    from = { x: event.clientX, y: event.clientY };
    root.setPointerCapture(event.pointerId);
  });
  on('pointermove', (event) => {
    const box = from && between(from, { x: event.clientX, y: event.clientY });
    if (!box || !isDrag(box)) return;
    // The words would hide what the frame is drawn over.
    how.classList.add('apart');
    draw(box);
  });
  on('pointercancel', () => (from = null));
  on('pointerup', (event) => {
    if (!from) return;
    const to = { x: event.clientX, y: event.clientY };
    const box = between(from, to);
    from = null;
    how.classList.remove('apart');
    if (box.width >= SMALLEST && box.height >= SMALLEST) drawn();
    else if (!isDrag(box)) press(to);
    frame.focus({ preventScroll: true });
  });
}

function build(doc: Document, root: HTMLElement): Parts {
  const make = <N extends 'div' | 'p' | 'button' | 'kbd'>(name: N, text: string, into: HTMLElement) => {
    const element = doc.createElement(name);
    element.append(text);
    into.append(element);
    return element;
  };
  const button = (text: string, key: string, into: HTMLElement) => {
    const made = make('button', `${text} `, into);
    made.type = 'button';
    make('kbd', key, made);
    return made;
  };
  root.setAttribute('role', 'dialog');
  root.setAttribute('aria-label', t('framing'));
  const frame = make('div', '', root);
  frame.className = 'frame';
  frame.tabIndex = 0;
  frame.setAttribute('role', 'application');
  frame.setAttribute('aria-label', t('frameBox'));
  frame.setAttribute('aria-describedby', 'how');
  const how = make('div', '', root);
  how.className = 'how stack';
  const words = make('div', '', how);
  words.id = 'how';
  make('p', t('frameHow'), words);
  make('p', t('frameKeys'), words).className = 'soft';
  const row = make('div', '', how);
  row.className = 'row';
  const keep = button(t('frameKeep'), 'Enter', row);
  keep.className = 'main';
  const leave = button(t('slipLeave'), 'Esc', row);
  const place = make('p', '', root);
  place.className = 'unseen';
  place.setAttribute('role', 'status');
  return { frame, how, place, keep, leave };
}

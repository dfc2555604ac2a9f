import { useLayoutEffect, useRef } from 'preact/hooks';
import { LONGEST_LINE } from '#lib/model/item.ts';
import type { LineText } from '#lib/notes/lines/line-text.ts';
import { pastedLines } from '#lib/notes/lines/pasted.ts';
import { t } from '../../text.ts';
import type { OutlineEditor, Spot } from './outline-editor.ts';

interface LineFieldProps {
  editor: OutlineEditor;
  typed: LineText;
  spot: Spot;
  /** The id of the text that says which keys do what. */
  helpId: string;
  undo(way: 'undo' | 'redo'): void;
  /** Leaves the field for the line's own button, from where Tab goes on. */
  leave(): void;
}

/** The line in hand as a text, with its lead marked on it. */
export function LineField({ editor, typed, spot, helpId, undo, leave }: LineFieldProps) {
  const field = useRef<HTMLTextAreaElement>(null);
  useLayoutEffect(() => {
    field.current!.focus();
    field.current!.setSelectionRange(spot.caret, spot.caret);
  }, [spot]);
  const { text, leadEnd } = typed;
  return (
    <div class="line-field">
      {/* Stands under the field, letter upon letter, and gives it its height. */}
      <div class="line-mirror" aria-hidden="true">
        <mark>{text.slice(0, leadEnd)}</mark>
        {text.slice(leadEnd)}
        {'\u200b'}
      </div>
      <textarea
        ref={field}
        rows={1}
        maxLength={LONGEST_LINE}
        aria-label={t('notesLine')}
        aria-describedby={helpId}
        value={text}
        dir="auto"
        onInput={(event) => editor.type(event.currentTarget.value, event.currentTarget.selectionEnd)}
        onKeyDown={(event) => onKey(event, { editor, undo, leave })}
        onPaste={(event) => onPaste(event, editor)}
      />
    </div>
  );
}

type KeyWork = Pick<LineFieldProps, 'editor' | 'undo' | 'leave'>;

function onKey(event: KeyboardEvent, { editor, undo, leave }: KeyWork): void {
  // Enter ends a composition first (kana, hangul, dead keys).
  if (event.isComposing) return;
  const field = event.currentTarget as HTMLTextAreaElement;
  const work = workFor(event, field, { editor, undo, leave });
  if (!work) return;
  event.preventDefault();
  work();
}

/** What a key does; null where it does what it does in any text. */
function workFor(event: KeyboardEvent, field: HTMLTextAreaElement, work: KeyWork): (() => void) | null {
  const { key, shiftKey, altKey, ctrlKey, metaKey } = event;
  if (ctrlKey || metaKey) return commandFor(key.toLowerCase(), shiftKey, field, work);
  const { editor, leave } = work;
  if (altKey) {
    if (key === 'ArrowUp') return () => editor.movePast('up', field.selectionEnd);
    return key === 'ArrowDown' ? () => editor.movePast('down', field.selectionEnd) : null;
  }
  switch (key) {
    case 'Enter':
      return shiftKey ? null : () => editor.split(field.selectionEnd);
    case 'Tab':
      return shiftKey ? () => editor.moveOut() : () => editor.moveIn();
    case 'Escape':
      return leave;
    default:
      return field.selectionStart === field.selectionEnd ? atEdge(key, field, editor) : null;
  }
}

function commandFor(key: string, isShift: boolean, field: HTMLTextAreaElement, { editor, undo }: KeyWork) {
  if (key === 'z') return () => undo(isShift ? 'redo' : 'undo');
  if (key === 'y') return () => undo('redo');
  return key === 'enter' ? () => editor.endLead(field.selectionEnd) : null;
}

/** What the keys do that lead out of a line at its ends. */
function atEdge(key: string, field: HTMLTextAreaElement, editor: OutlineEditor): (() => void) | null {
  const isFirst = field.selectionStart === 0;
  const isLast = field.selectionStart === field.value.length;
  const isOneRow = field.clientHeight < 2 * parseFloat(getComputedStyle(field).lineHeight);
  switch (key) {
    case 'Backspace':
      return isFirst ? () => editor.joinBefore() : null;
    case 'Delete':
      return isLast ? () => editor.joinAfter() : null;
    case 'ArrowUp':
      return isFirst || isOneRow ? () => editor.step(-1) : null;
    case 'ArrowDown':
      return isLast || isOneRow ? () => editor.step(1) : null;
    default:
      return null;
  }
}

/** Several lines that are pasted become several lines. */
function onPaste(event: ClipboardEvent, editor: OutlineEditor): void {
  const text = event.clipboardData?.getData('text/plain') ?? '';
  const lines = pastedLines(text);
  if (lines.length < 2) return;
  event.preventDefault();
  editor.add(lines);
}

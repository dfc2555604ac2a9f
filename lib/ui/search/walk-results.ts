/**
 * Arrow keys lead from the field down into the results, through them, and from the first back to the field. To be
 * called on keydown of what holds both.
 */
export function walkResults(event: KeyboardEvent & { currentTarget: HTMLElement }): void {
  const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  const isPlain = !event.altKey && !event.ctrlKey && !event.metaKey && !event.shiftKey;
  if (step === undefined || !isPlain) return;
  const stops = [...event.currentTarget.querySelectorAll<HTMLElement>('input[type="search"], .result > a')];
  const at = stops.indexOf(event.target as HTMLElement);
  const next = stops[at + step];
  if (at < 0 || !next) return;
  event.preventDefault();
  next.focus();
}

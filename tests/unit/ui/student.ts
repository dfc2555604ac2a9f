import { act, cleanup, configure, fireEvent, screen, waitFor } from '@testing-library/preact';

// Screens are waited for as long as a busy machine may need; nothing is waited for where it is there.
configure({ asyncUtilTimeout: 10_000 });

export type Name = string | RegExp;

/** What has a role and a name, once it is there. */
export const see = (role: string, name?: Name, within = screen): Promise<HTMLElement> =>
  within.findByRole(role, name === undefined ? {} : { name });

/** A text, once it is there. */
export const read = (text: Name): Promise<HTMLElement> => screen.findByText(text);

/** Presses the button with this name, once it is there and can be pressed. */
export async function press(name: Name, role = 'button'): Promise<void> {
  const button = await see(role, name);
  await waitFor(() => {
    if ((button as HTMLButtonElement).disabled) throw new Error(`${String(name)} cannot be pressed`);
  });
  button.focus();
  fireEvent.click(button);
}

/** Follows the link with this name. */
export const follow = (name: Name): Promise<void> => press(name, 'link');

/** Types into the field with this label; what stood there is replaced. */
export async function type(label: Name, value: string): Promise<HTMLInputElement> {
  const field = (await screen.findByLabelText(label)) as HTMLInputElement;
  field.focus();
  fireEvent.input(field, { target: { value } });
  return field;
}

/** Types into a field and goes on to another. */
export async function fillIn(label: Name, value: string): Promise<void> {
  const field = await type(label, value);
  fireEvent.change(field);
  field.blur();
}

/** Chooses an option by its words. */
export async function choose(label: Name, option: string): Promise<void> {
  const field = (await screen.findByLabelText(label)) as HTMLSelectElement;
  const found = [...field.options].find(({ text }) => text === option);
  if (!found) throw new Error(`no option ${option} among ${[...field.options].map(({ text }) => text)}`);
  fireEvent.change(field, { target: { value: found.value } });
}

/** Presses a key where the focus is; does what a browser does with Enter where nobody else does. */
export function key(name: string, init: KeyboardEventInit = {}): void {
  const at = document.activeElement ?? document.body;
  const goesOn = fireEvent.keyDown(at, { key: name, ...init });
  if (!goesOn || name !== 'Enter') return;
  if (at instanceof HTMLButtonElement || at instanceof HTMLAnchorElement) fireEvent.click(at);
  if (at instanceof HTMLInputElement) at.form?.requestSubmit();
}

/** Takes everything off the screen, with what it does on leaving done at once. */
export function clearScreen(): void {
  void act(() => cleanup());
}

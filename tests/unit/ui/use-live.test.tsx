// @vitest-environment jsdom
import { act, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { type Change, announce } from '#lib/store/changes.ts';
import type { StoreName } from '#lib/store/schema.ts';
import { useLive } from '#lib/ui/use-live.ts';
import { anAttempt } from '../builders.ts';
import { clearScreen } from './student.ts';

afterEach(clearScreen);

interface Reading {
  answer(value: string): void;
  fail(error: Error): void;
}

/** Readings that wait until the test answers them. */
function readings() {
  const asked: Reading[] = [];
  const read = () => new Promise<string>((resolve, reject) => asked.push({ answer: resolve, fail: reject }));
  return { asked, read };
}

function Shown({ read, name = 'one', stores = ['clips'], follow }: ShownProps) {
  const live = useLive(read, stores, name, follow);
  if (live.state === 'failed') return <p role="alert">{String(live.error)}</p>;
  return <p role="status">{live.state === 'ready' ? live.value : 'reading'}</p>;
}
interface ShownProps {
  read(): Promise<string>;
  name?: string;
  stores?: StoreName[];
  follow?: (value: string, change: Change) => string | null;
}

const status = () => screen.getByRole('status').textContent;
const counted = (asked: Reading[], count: number) => vi.waitFor(() => expect(asked).toHaveLength(count));

test('what was read is shown once it is there', async () => {
  const { asked, read } = readings();
  render(<Shown read={read} />);
  expect(status()).toBe('reading');
  await counted(asked, 1);
  asked[0]!.answer('two clips');
  await screen.findByText('two clips');
});

test('it is read again when one of its stores is written, and the value before stays meanwhile', async () => {
  const { asked, read } = readings();
  render(<Shown read={read} />);
  await counted(asked, 1);
  asked[0]!.answer('two clips');
  await screen.findByText('two clips');
  announce(['settings', 'clips']);
  await counted(asked, 2);
  expect(status()).toBe('two clips');
  asked[1]!.answer('three clips');
  await screen.findByText('three clips');
});

test('a change that it can follow is not read for, one that it cannot is', async () => {
  const { asked, read } = readings();
  const follow = (value: string, { attempt }: Change) => (attempt ? `${value}, one tried` : null);
  render(<Shown read={read} stores={['attempts']} follow={follow} />);
  await counted(asked, 1);
  // While the first reading is under way nothing can be followed.
  announce(['attempts'], anAttempt());
  await counted(asked, 2);
  asked[1]!.answer('two items');
  await screen.findByText('two items');
  announce(['attempts', 'nextUp'], anAttempt());
  await screen.findByText('two items, one tried');
  announce(['attempts'], anAttempt());
  await screen.findByText('two items, one tried, one tried');
  expect(asked).toHaveLength(2);
  announce(['attempts']);
  await counted(asked, 3);
});

test('a store that it does not show is nothing to it', async () => {
  const { asked, read } = readings();
  render(<Shown read={read} />);
  await counted(asked, 1);
  announce(['settings']);
  announce(['clips']);
  expect(asked).toHaveLength(2);
});

test('a late answer is dropped: the latest reading stands', async () => {
  const { asked, read } = readings();
  render(<Shown read={read} />);
  await counted(asked, 1);
  announce(['clips']);
  await counted(asked, 2);
  asked[1]!.answer('new');
  await screen.findByText('new');
  asked[0]!.answer('old');
  await new Promise((resolve) => setTimeout(resolve, 0));
  expect(status()).toBe('new');
});

test('a reading that fails is shown, and a change mends it', async () => {
  const { asked, read } = readings();
  render(<Shown read={read} />);
  await counted(asked, 1);
  asked[0]!.fail(new Error('no such store'));
  expect((await screen.findByRole('alert')).textContent).toBe('Error: no such store');
  announce(['clips']);
  await counted(asked, 2);
  asked[1]!.answer('there again');
  await screen.findByText('there again');
});

test('another key starts afresh, and an answer to the key before is dropped', async () => {
  const { asked, read } = readings();
  const { rerender } = render(<Shown read={read} name="one" />);
  await counted(asked, 1);
  rerender(<Shown read={read} name="two" />);
  expect(status()).toBe('reading');
  await counted(asked, 2);
  asked[0]!.answer('of one');
  await new Promise((resolve) => setTimeout(resolve, 0));
  expect(status()).toBe('reading');
  asked[1]!.answer('of two');
  await screen.findByText('of two');
});

test('what was read under the key before is not shown under another', async () => {
  const { asked, read } = readings();
  const { rerender } = render(<Shown read={read} name="one" />);
  await counted(asked, 1);
  asked[0]!.answer('of one');
  await screen.findByText('of one');
  rerender(<Shown read={read} name="two" />);
  expect(status()).toBe('reading');
});

test('once it has left the screen it reads no more', async () => {
  const { asked, read } = readings();
  const { unmount } = render(<Shown read={read} />);
  await counted(asked, 1);
  void act(() => void unmount());
  announce(['clips']);
  expect(asked).toHaveLength(1);
});

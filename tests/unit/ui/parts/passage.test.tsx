// @vitest-environment jsdom
import { screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Picture } from '#lib/model/picture.ts';
import { Passage } from '#lib/ui/parts/passage.tsx';
import { newId } from '../../builders.ts';
import { course } from '../a-course.ts';
import { deckWith, freshScreens, renderInDeck } from '../render-in-deck.tsx';
import { clearScreen } from '../student.ts';

// Blobs of the simulated browser cannot be stored; Node's can.
vi.hoisted(() => {
  globalThis.Blob = process.getBuiltinModule('node:buffer').Blob as never;
});

freshScreens();
const addresses = new Set<string>();
beforeEach(() => {
  addresses.clear();
  let made = 0;
  URL.createObjectURL = vi.fn(() => {
    const address = `blob:picture-${++made}`;
    addresses.add(address);
    return address;
  });
  URL.revokeObjectURL = vi.fn((address: string) => void addresses.delete(address));
});
afterEach(() => expect(addresses.size).toBe(0));

const picture = (alt: string): Picture => ({
  id: newId(),
  createdAt: 0,
  changedAt: 0,
  courseId: course.id,
  clipId: newId(),
  bytes: new Blob(['x'], { type: 'image/png' }),
  type: 'image/png',
  width: 40,
  height: 20,
  alt,
});

const [wave, shelf] = [picture('A wave'), picture('The shelf')];

test('pictures stand in their places, with the text that the deck has for them', async () => {
  await deckWith({ pictures: [wave, shelf] });
  const html =
    '<p>See <img data-picture="1" alt="old" width="40" height="20"> and <img data-picture="0" alt="x">.</p>';
  renderInDeck(<Passage html={html} label="The passage" pictureIds={[wave.id, shelf.id]} />);
  const images = await waitFor(() => {
    const found = screen.getAllByRole('img') as HTMLImageElement[];
    if (found.some((one) => !one.src)) throw new Error('no address yet');
    return found;
  });
  expect(images.map(({ alt }) => alt)).toEqual(['The shelf', 'A wave']);
  expect(images.map(({ src }) => src)).toEqual(['blob:picture-2', 'blob:picture-1']);
  clearScreen();
});

test('pictures without a place follow', async () => {
  await deckWith({ pictures: [wave, shelf] });
  renderInDeck(<Passage html="<p>Words.</p>" label="The passage" pictureIds={[wave.id, shelf.id]} />);
  expect((await screen.findAllByRole('img')).map((one) => (one as HTMLImageElement).alt)).toEqual([
    'A wave',
    'The shelf',
  ]);
  clearScreen();
});

test('one that is gone is told, and its place keeps its words', async () => {
  await deckWith({ pictures: [wave] });
  renderInDeck(
    <Passage
      html='<p><img data-picture="0" alt="Was here"></p>'
      label="The passage"
      pictureIds={[shelf.id, picture('never kept').id, wave.id]}
    />,
  );
  await screen.findByText('This picture is not here any more.');
  expect((screen.getByAltText('Was here') as HTMLImageElement).src).toBe('');
  expect(await screen.findByAltText('A wave')).toBeTruthy();
  clearScreen();
});

test('without pictures the deck is not asked', async () => {
  await deckWith();
  renderInDeck(<Passage html="<p>Words.</p>" label="The passage" />);
  expect((await screen.findByRole('region', { name: 'The passage' })).textContent).toBe('Words.');
  expect(URL.createObjectURL).not.toHaveBeenCalled();
});

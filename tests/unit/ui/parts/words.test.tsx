// @vitest-environment jsdom
import { render, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { Words } from '#lib/ui/parts/words.tsx';
import { freshScreens } from '../render-in-deck.tsx';

freshScreens();

const text = String.raw`Waves: \[c = \sqrt{g h}\] near the shore`;

test('a formula that is set apart stands apart, and in an excerpt in the line', async () => {
  const apart = render(<Words text={text} />);
  await waitFor(() => expect(apart.container.querySelector('math')?.getAttribute('display')).toBe('block'));
  expect(apart.container.querySelector('.formula')?.classList.contains('apart')).toBe(true);
  const inLine = render(<Words text={text} isInLine />);
  await waitFor(() => expect(inLine.container.querySelector('math')).not.toBeNull());
  expect(inLine.container.querySelector('math')?.getAttribute('display')).not.toBe('block');
  expect(inLine.container.querySelector('.formula')?.classList.contains('apart')).toBe(false);
});

// @vitest-environment jsdom
import { afterEach, expect, test } from 'vitest';
import { captionUnder } from '#lib/capture/pictures/caption.ts';
import { find, show } from '../select.ts';
import { layOut } from './boxes.ts';

const BOX = { left: 100, top: 100, width: 200, height: 100 };
const UNDER = 'data-box="100 100 200 100"';
const AWAY = 'data-box="500 500 200 100"';

afterEach(() => document.body.replaceChildren());

function under(html: string) {
  show(html);
  layOut(document);
  return captionUnder(document, BOX);
}

test('the caption of the figure, and the alternative text beside it', () => {
  const found = under(
    `<figure><img ${UNDER} alt="six columns"><figcaption>Depth  by\ncolour</figcaption></figure>` +
      `<figure><img ${AWAY} alt="else"><figcaption>Elsewhere</figcaption></figure>`,
  );
  expect(found).toMatchObject({ text: 'Depth by colour', alt: 'six columns' });
  expect(found.element).toBe(find('figcaption'));
});

test.each([
  ['the alternative text', `<img ${UNDER} alt="a wave">`, 'a wave'],
  ['the title of a drawing', `<svg ${UNDER}><title>A train of waves</title></svg>`, 'A train of waves'],
  ['the label of a canvas', `<canvas ${UNDER} aria-label="two halves"></canvas>`, 'two halves'],
  ['the caption of a table', `<table ${UNDER}><caption>Periods</caption></table>`, 'Periods'],
  ['what describes it', `<img ${UNDER} aria-describedby="d e"><p id="d">Said below.</p>`, 'Said below.'],
  ['several', `<img ${UNDER} alt="left"><img ${UNDER} alt="right"><img ${UNDER} alt="left">`, 'left\nright'],
  ['headings where nothing else is there', `<h3 data-box="110 110 50 20">Orbits</h3>`, 'Orbits'],
  ['nothing', `<p ${UNDER}>Words.</p>`, ''],
])('%s', (_what, html, text) => {
  expect(under(html)).toMatchObject({ text, alt: text });
});

test('half of a picture under the frame is enough, a corner is not; a frame within a large picture is', () => {
  expect(under('<img data-box="0 100 220 100" alt="half">').text).toBe('half');
  expect(under('<img data-box="0 0 120 120" alt="corner">').text).toBe('');
  expect(under('<img data-box="0 0 900 900" alt="large">').text).toBe('large');
});

// @vitest-environment jsdom
import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { beforeEach, expect, test, vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import { FIRST_SETTINGS } from '#lib/model/settings.ts';
import { WORD, WRITER } from '../../../capture/own/clipboard.ts';
import { course, courseRows, deep } from '../../a-course.ts';
import { freshScreens, openDesk } from '../../render-in-deck.tsx';
import { clearScreen, press, read, see, type } from '../../student.ts';

// Blobs of the simulated browser cannot be stored; Node's can.
vi.hoisted(() => {
  globalThis.Blob = process.getBuiltinModule('node:buffer').Blob as never;
});

freshScreens();

/** What a browser does with pictures, which the simulated one cannot: real ones are in tests/browser. */
const decode = vi.fn(async () => ({ width: 40, height: 30, close: () => undefined }));
beforeEach(() => {
  localStorage.clear();
  decode.mockClear();
  vi.stubGlobal('createImageBitmap', decode);
  vi.stubGlobal(
    'OffscreenCanvas',
    class {
      getContext = () => ({ fillRect: () => undefined, drawImage: () => undefined });
      convertToBlob = async ({ type: kind }: { type: string }) => new Blob(['drawn'], { type: kind });
    },
  );
});

const PNG = Uint8Array.from(
  atob('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=='),
  (character) => character.charCodeAt(0),
);
const imageFile = (bytes: Uint8Array | string, name = 'sheet.png', kind = 'image/png') => {
  const file = new File([bytes as never], name, { type: kind });
  // The simulated browser's files have no such method.
  const data = typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes;
  return Object.assign(file, { arrayBuffer: async () => data.slice().buffer });
};

async function paste(data: Record<string, string>, files: File[] = []): Promise<void> {
  const field = (await screen.findByLabelText('Notes')) as HTMLTextAreaElement;
  field.focus();
  const clipboardData = { getData: (kind: string) => data[kind] ?? '', files };
  fireEvent.paste(field, { clipboardData });
}
const choose = async (...files: File[]) =>
  fireEvent.change(await screen.findByLabelText('Add a photographed sheet …'), { target: { files } });
const openOwn = () => openDesk('own', courseRows());
/** What is kept of a draft. */
const drafted = async () => ({ ...localStorage, ...(await fakeBrowser.storage.local.get(null)) });

test('typed notes with TeX are kept as a clip of a source of their own, under its topic', async () => {
  const settings = [{ ...FIRST_SETTINGS, courseId: course.id, aimedTopicId: deep.id }];
  const db = await openDesk('own', courseRows({ settings }));
  await type('Name (you can leave it empty)', 'Lesson 3');
  await type('Notes', 'Waves run at $\\sqrt{gh}$.\n\nAnd \\(\\frac{1}{\\) broken.');
  expect((await see('alert')).textContent).toContain('\\frac{1}{');
  await press('Keep the notes');
  await read('Kept as 1 clip.');
  const [source] = (await db.getAll('sources')).filter(({ kind }) => kind === 'own');
  expect(source).toMatchObject({ title: 'Lesson 3', url: expect.stringMatching(/^urn:uuid:/) });
  const [clip] = await db.getAll('clips');
  expect(clip).toMatchObject({
    sourceId: source!.id,
    courseId: course.id,
    topicIds: [deep.id],
    selectors: [],
    text: 'Waves run at \\( \\sqrt{gh} \\).\nAnd \\( \\frac{1}{ \\) broken.',
  });
  expect(clip!.html).toContain('<msqrt>');
  expect((await db.get('settings', 'settings'))!.aimedTopicId).toBeNull();
  expect(((await screen.findByLabelText('Notes')) as HTMLTextAreaElement).value).toBe('');
  await waitFor(async () => expect(await drafted()).toEqual({}));
  location.hash = `#/clip/${clip!.id}`;
  const region = await see('region', 'Where it is from');
  expect(region.textContent).toMatch(/^Lesson 3 · Own notes, \d+ \w+ \d{4}$/);
  expect(region.querySelector('a')).toBeNull();
});

test('what was typed is there after the page was left, and until it is kept', async () => {
  const long = 'waves '.repeat(3333) + 'xx';
  await openOwn();
  await type('Notes', long);
  await type('Name (you can leave it empty)', '😀 שלום');
  await choose(imageFile(PNG));
  await type('What is on it', 'A sheet');
  clearScreen();
  expect(Object.keys(await drafted())).toHaveLength(2);
  const db = await openOwn();
  expect(((await screen.findByLabelText('Notes')) as HTMLTextAreaElement).value).toBe(long);
  expect(screen.getByRole('img', { name: 'A sheet' }).getAttribute('src')).toMatch(/^data:image\/png/);
  await press('Keep the notes');
  await read('Kept as 1 clip.');
  const [clip] = await db.getAll('clips');
  expect(clip!.text).toBe(`${long}\nA sheet`);
  await waitFor(async () => expect(await drafted()).toEqual({}));
  const own = (await db.getAll('sources')).find(({ kind }) => kind === 'own');
  expect(own!.title).toBe('😀 שלום');
});

test('rich text from a word processor stands in its place among what was typed, and can be made plain', async () => {
  const db = await openOwn();
  const field = (await type('Notes', 'before after')) as unknown as HTMLTextAreaElement;
  field.setSelectionRange(7, 7);
  await paste({ 'text/html': WORD, 'text/plain': 'Waves' });
  await see('region', 'Pasted notes');
  await read('1 picture did not come along. Copy it by itself and paste it here, or add it as a file.');
  expect(screen.getAllByRole('textbox').map((one) => (one as HTMLTextAreaElement).value)).toEqual([
    '',
    'before ',
    'after',
  ]);
  await press('Keep the notes');
  await read('Kept as 1 clip.');
  const [clip] = await db.getAll('clips');
  expect(clip!.text).toMatch(/^before\nWaves\n[\s\S]*- Swell\n {2}- from afar[\s\S]*\\sqrt[\s\S]*\nafter$/);
});

test('pictures within pasted text come along, drawn anew', async () => {
  const db = await openOwn();
  await paste({ 'text/html': WRITER });
  await see('region', 'Pasted notes');
  await press('Keep the notes');
  await read('Kept as 1 clip.');
  const [clip] = await db.getAll('clips');
  expect(clip!.pictureIds).toHaveLength(2);
  expect(await db.get('pictures', clip!.pictureIds[0]!)).toMatchObject({
    alt: 'formula: T = 12.42 h',
    type: 'image/png',
    width: 40,
    height: 30,
  });
});

test('pasted words without form are left to the field, and MathML as text is a formula', async () => {
  await openOwn();
  await paste({ 'text/html': '<meta charset="utf-8"><span>only words</span>', 'text/plain': 'only words' });
  expect(screen.queryByRole('region', { name: 'Pasted notes' })).toBeNull();
  await paste({
    'text/plain':
      '<mml:math xmlns:mml="http://www.w3.org/1998/Math/MathML"><mml:msup><mml:mi>x</mml:mi><mml:mn>2</mml:mn></mml:msup></mml:math>',
  });
  expect((await see('region', 'Pasted notes')).querySelector('math msup')).not.toBeNull();
  await press('As plain text');
  expect(((await screen.findByLabelText('Notes')) as HTMLTextAreaElement).value).toBe('\\( x^{2} \\)');
});

test('Markdown is offered as formatted, and can be cut at its headings', async () => {
  const db = await openOwn();
  await type('Notes', '## Waves\n\n- **Swell** $x$\n\n## Tides\n\ntext');
  fireEvent.click(await screen.findByLabelText('This is Markdown: show it formatted'));
  expect((await see('region', 'Formatted')).querySelector('strong')!.textContent).toBe('Swell');
  fireEvent.click(await screen.findByLabelText('2 clips, one for each heading'));
  await press('Keep the notes');
  await read('Kept as 2 clips.');
  const clips = (await db.getAll('clips')).sort((a, b) => a.createdAt - b.createdAt);
  expect(clips.map(({ text, headings }) => [text, headings])).toEqual([
    ['Waves\n- Swell \\( x \\)', ['Waves']],
    ['Tides\ntext', ['Tides']],
  ]);
  expect(new Set(clips.map(({ sourceId }) => sourceId)).size).toBe(1);
});

test('a photographed sheet needs a few words, and is kept with them', async () => {
  const db = await openOwn();
  await choose(imageFile(PNG));
  await press('Keep the notes');
  await read('Say in a few words what is on each photographed sheet, then keep the notes.');
  expect(await db.count('clips')).toBe(0);
  await type('What is on it', 'Orbits <sketch>');
  await press('Keep the notes');
  await read('Kept as 1 clip.');
  const [clip] = await db.getAll('clips');
  expect(clip).toMatchObject({ text: expect.stringContaining('Orbits <sketch>'), pictureIds: { length: 1 } });
  expect(await db.get('pictures', clip!.pictureIds[0]!)).toMatchObject({
    alt: 'Orbits <sketch>',
    clipId: clip!.id,
  });
});

test('what is no picture, or cannot be read, says why; what was typed stays', async () => {
  const db = await openOwn();
  await type('Notes', 'typed');
  await choose(imageFile('\0\0\0\x18ftypheic\0\0\0\0', 'IMG.HEIC', 'image/heic'));
  decode.mockRejectedValueOnce(new Error('no decoder'));
  await choose(imageFile('\0\0\0\x18ftypheic\0\0\0\0', 'IMG.HEIC', 'image/heic'));
  await read(/^IMG\.HEIC: This browser cannot read this kind of picture/);
  decode.mockRejectedValueOnce(new Error('broken'));
  await choose(imageFile(PNG, 'cut.png'));
  await read(/^cut\.png: This picture cannot be read/);
  await choose(imageFile('no picture', 'a.png'));
  await read(/^a\.png: This file is not a picture/);
  const large = PNG.slice();
  new DataView(large.buffer).setUint32(16, 10_000);
  new DataView(large.buffer).setUint32(20, 10_000);
  const before = decode.mock.calls.length;
  await choose(imageFile(large, 'large.png'));
  await read(
    'large.png: This picture has 100 million pixels, and 64 million is the most that is read. Save it smaller, or photograph it again.',
  );
  const heavy = imageFile(PNG, 'heavy.png');
  Object.defineProperty(heavy, 'size', { value: 30_000_001 });
  await choose(heavy);
  await read(/^heavy\.png: This file has 30 MB/);
  // Neither was decoded.
  expect(decode.mock.calls).toHaveLength(before);
  expect(screen.getByDisplayValue('typed')).toBeTruthy();
  expect(await db.count('clips')).toBe(0);
});

test('a picture that is pasted is a sheet; so is one that a browser copies with its address', async () => {
  await openOwn();
  await paste({ 'text/html': '<img src="http://127.0.0.1/a.png">' }, [imageFile(PNG)]);
  expect(await screen.findAllByLabelText('What is on it')).toHaveLength(1);
  await paste({}, [imageFile(PNG)]);
  await waitFor(() => expect(screen.getAllByLabelText('What is on it')).toHaveLength(2));
  fireEvent.click(screen.getAllByText('Take out')[0]!);
  await waitFor(() => expect(screen.getAllByLabelText('What is on it')).toHaveLength(1));
});

test('clips lists own notes by their day, and leads here', async () => {
  const db = await openDesk('own', courseRows());
  await type('Notes', 'Mine');
  await press('Keep the notes');
  await read('Kept as 1 clip.');
  expect(await db.count('clips')).toBe(1);
  location.hash = '#/clips';
  await read(/ · Own notes, \d+ \w+ \d{4} · /);
  expect((await see('link', 'Add own notes')).getAttribute('href')).toBe('#/own');
});

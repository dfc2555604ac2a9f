import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { imageHeader } from '#lib/capture/own/image-header.ts';

const plain = sharp({ create: { width: 321, height: 123, channels: 3, background: '#369' } });

test.each(['png', 'jpeg', 'webp', 'gif'] as const)(
  'the size of a %s that an image library wrote',
  async (type) => {
    const bytes = await plain.clone().toFormat(type).toBuffer();
    expect(imageHeader(new Uint8Array(bytes))).toEqual({ type, width: 321, height: 123 });
  },
);

test.each([
  ['lossless', { lossless: true }],
  ['with transparency', { alphaQuality: 50 }],
])('WebP %s', async (_name, options) => {
  const bytes = await plain.clone().ensureAlpha(0.5).webp(options).toBuffer();
  expect(imageHeader(new Uint8Array(bytes))).toEqual({ type: 'webp', width: 321, height: 123 });
});

test('a JPEG with notes of the camera before the picture, a progressive one too', async () => {
  const bytes = await plain
    .clone()
    .jpeg({ progressive: true })
    .withExif({ IFD0: { Copyright: 'x'.repeat(5000) } })
    .toBuffer();
  expect(imageHeader(new Uint8Array(bytes))).toEqual({ type: 'jpeg', width: 321, height: 123 });
});

test('HEIC is known by its brand, and what is no picture is none', () => {
  const file = (text: string) => new TextEncoder().encode(text);
  expect(imageHeader(file('\0\0\0\x18ftypheic\0\0\0\0mif1heic'))?.type).toBe('heic');
  expect(imageHeader(file('\0\0\0\x18ftypmif1\0\0\0\0mif1heic'))?.type).toBe('heic');
  expect(imageHeader(file('\0\0\0\x18ftypavif\0\0\0\0'))?.type).toBe('avif');
  for (const none of ['', 'P', '%PDF-1.7', '<svg xmlns="x"/>', '\0\0\0\x18ftypisom\0\0'])
    expect(imageHeader(file(none))).toBeNull();
  expect(imageHeader(new Uint8Array(readFileSync('assets/icon.svg')))).toBeNull();
});

test('one that is cut off has no size', async () => {
  const bytes = new Uint8Array(await plain.clone().png().toBuffer());
  expect(imageHeader(bytes.subarray(0, 18))).toBeNull();
  const jpeg = new Uint8Array(await plain.clone().jpeg().toBuffer());
  expect(imageHeader(jpeg.subarray(0, 30))).toEqual({ type: 'jpeg', width: 0, height: 0 });
});

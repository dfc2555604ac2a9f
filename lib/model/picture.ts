import { z } from 'zod';
import { Id, Kept } from './basics.ts';

export const PICTURE_TYPES = ['image/png', 'image/jpeg', 'image/webp'] as const;

/** The longest side that a picture is kept with, in pixels: sharp on an A4 side at 300 dots an inch over half its width. */
export const LONGEST_SIDE = 1600;

/** The heaviest picture that is kept, in bytes. */
export const HEAVIEST_PICTURE = 4_000_000;

/** A diagram, or an image inside a passage: kept as its bytes, since its address may change or be gone. */
export const Picture = Kept.extend({
  courseId: Id,
  clipId: Id,
  bytes: z.instanceof(Blob).refine((blob) => blob.size <= HEAVIEST_PICTURE, { message: 'too heavy' }),
  type: z.enum(PICTURE_TYPES),
  /** In pixels of the picture. */
  width: z.number().int().positive(),
  height: z.number().int().positive(),
  /** The image's alternative text or its caption; empty where the page gave none. */
  alt: z.string().max(2000),
});
export type Picture = z.infer<typeof Picture>;

/** A picture on its way from a page to the store: its bytes as a data URL, since messages carry text only. */
export const PictureDraft = z.object({
  dataUrl: z
    .string()
    .regex(/^data:image\/(png|jpeg|webp);base64,/)
    .max(HEAVIEST_PICTURE * 1.4),
  width: Picture.shape.width,
  height: Picture.shape.height,
  alt: Picture.shape.alt,
});
export type PictureDraft = z.infer<typeof PictureDraft>;

import { cutText } from '#lib/syllabus/outline/cut-text.ts';

/** The longest name that is made of a text, in characters: file systems take 255 bytes, endings included. */
const LONGEST_NAME = 60;

/**
 * A name for a file: `text` and `what` it is, without what file systems refuse. Windows refuses the most: its reserved
 * characters, and dots and spaces at the end. Marks that turn the direction of writing would disguise the ending.
 *
 * @param ending such as "json"
 */
export function fileName(text: string, what: string, ending: string): string {
  const words = cutText(
    text
      .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}<>:"/\\|?*]+/gu, ' ')
      .replace(/\s+/g, ' ')
      .replace(/^[\s.]+|[\s.]+$/g, ''),
    LONGEST_NAME,
  );
  return `${words} ${what}.${ending}`.trim();
}

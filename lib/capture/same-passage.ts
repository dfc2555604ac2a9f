/**
 * A passage's text in the form in which two captures of the same words are equal: Unicode NFC, every run of white
 * space (no-break spaces and line ends too) as one space, trimmed. Case and punctuation still count.
 */
export function passageKey(text: string): string {
  return text.normalize('NFC').replace(/\s+/g, ' ').trim();
}

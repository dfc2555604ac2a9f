const PARTS = /^(?:(?:(\d{1,2}):)?([0-5]?\d):([0-5]?\d)|(\d{1,5}))([.,]\d{1,3})?$/;

/** A moment in seconds as a student reads it: 1:05 or 1:02:03; parts of a second are left out. */
export function writeTime(seconds: number): string {
  const whole = Math.floor(seconds);
  const two = (number: number): string => String(number).padStart(2, '0');
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60];
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
}

/** The seconds that a student wrote as 1:05, 1:02:03, 65 or 1:05.5; null when it is no time. */
export function readTime(text: string): number | null {
  const match = PARTS.exec(text.trim());
  if (!match) return null;
  const [, hours = 0, minutes = 0, seconds = 0, bare = 0, part = ''] = match;
  return 3600 * +hours + 60 * +minutes + +seconds + +bare + Number(`0${part.replace(',', '.')}`);
}

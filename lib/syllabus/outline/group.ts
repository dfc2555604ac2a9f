import { LONGEST } from '../outline-row.ts';

// Words that exam boards use for tiers, levels and options: common practice.
const TIER = '(?:higher|foundation|extended|core|supplement(?:ary)?|standard|ordinary|advanced)';
const KIND = '(?:[ -](?:tier|level|paper|content))';
const SHORT = '(?:HL|SL|AHL|HT|FT)';
const COURSE = '(?:separate|triple|combined)(?:[ -](?:sciences?|award|course))?';
const OPTION = String.raw`options?\s+(?:[A-Z]|[IVX]{1,4}|\d{1,2})\b`;
const SURE = `(?:${TIER}${KIND}|${SHORT}|A[ -]level|AS[ -]level|${OPTION}|optional)`;
/** Words that say a tier where "only" stands behind them. */
const WITH_ONLY = `(?:${SURE}|${TIER}|${COURSE}|AS|A2)`;

const NAMED = `(?:(${WITH_ONLY})\\s+only|(${SURE}))`;
const BRACKETED_END = new RegExp(String.raw`\s*[([]\s*${NAMED}\s*[)\]]\s*\.?$`, 'i');
const BRACKETED_START = new RegExp(String.raw`^[([]\s*${NAMED}\s*[)\]]\s*[:–—-]?\s*`, 'i');
const OPEN_END = new RegExp(String.raw`\s*[,;:–—-]\s*(${WITH_ONLY})\s+only\s*\.?$`, 'i');
const OPEN_START = new RegExp(
  String.raw`^(?:(${WITH_ONLY})\s+only\s*[:–—-]?|(${TIER}${KIND}|${OPTION})\s*[:–—-])\s+(?=\S)`,
  'i',
);
const WHOLE = new RegExp(String.raw`^(${TIER}${KIND}|${OPTION})(?:\s+(?:only|content|topics?))?$`, 'i');

export interface TextAndGroup {
  text: string;
  /** The tier or option, one way of writing for each; empty where the row is for everyone. */
  group: string;
}

/**
 * Parts a tier or option such as "(Higher tier only)", "[HL]" or "SL only:" from a row's text. A row that is nothing
 * but its name keeps it as its text.
 */
export function readGroup(text: string): TextAndGroup {
  const whole = WHOLE.exec(text.trim());
  if (whole) return { text, group: groupName(whole[1] ?? '') };
  for (const way of [BRACKETED_END, OPEN_END, BRACKETED_START, OPEN_START]) {
    const found = way.exec(text);
    const rest = found ? text.replace(found[0], ' ').trim() : '';
    if (found && rest) return { text: rest, group: groupName(found[1] ?? found[2] ?? '') };
  }
  return { text, group: '' };
}

const LONG: Readonly<Record<string, string>> = { HT: 'Higher tier', FT: 'Foundation tier' };

/** One way of writing for the same tier: "HT", "higher-tier" and "Higher" are all "Higher tier". */
export function groupName(written: string): string {
  const words = written.trim().replace(/\s+/g, ' ');
  const short = words.toUpperCase();
  if (LONG[short]) return LONG[short];
  if (/^(?:HL|SL|AHL|AS|A2)$/i.test(words)) return short;
  const plain = words.replace(/-/g, ' ').slice(0, LONGEST.group).trim();
  const named = /^(?:higher|foundation)$/i.test(plain) ? `${plain} tier` : plain;
  return named
    .replace(/^\p{Ll}/u, (letter) => letter.toUpperCase())
    .replace(/(?<=^.+)(?:Tier|Level)\b/, (word) => word.toLowerCase());
}

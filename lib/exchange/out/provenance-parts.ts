import { linkBack } from '#lib/capture/links/link-back.ts';
import { hasAddress } from '#lib/model/source.ts';
import { dayInWords } from '../reference.ts';
import type { OutWords } from './out-words.ts';
import type { OutClip } from './sections.ts';

export interface ProvenancePart {
  text: string;
  /** Where it leads; nowhere without. */
  url?: string;
}

/**
 * Where a clip is from, part by part: its title, which leads to the passage, author, site, day, the address itself, the
 * licence, and the day on which it was kept. Own notes are called by their day and lead nowhere.
 */
export function provenanceParts({ clip, source }: OutClip, words: OutWords): ProvenancePart[] {
  const kept = { text: words.keptOn(clip.createdAt) };
  if (!source) return [kept];
  const { kind, url, title, author, site, published, licence, createdAt } = source;
  if (kind === 'own') return said([title, words.ownNotes(createdAt)]);
  const hasLink = hasAddress(source);
  const name = title || url;
  return [
    hasLink ? { text: name, url: linkBack({ url, selectors: clip.selectors }) } : { text: name },
    ...said([author, site, published && dayInWords(published)]),
    ...(hasLink ? [{ text: url, url }] : []),
    ...(licence ? [{ text: `${words.licence}: ${licence}`, url: licence }] : []),
    kept,
  ];
}

const said = (texts: string[]): ProvenancePart[] => texts.filter(Boolean).map((text) => ({ text }));

/** Whether a clip is someone else's work, to be used for one's own study only. */
export const isOthers = ({ source }: OutClip): boolean => source?.kind !== 'own';

import type { ShareUnit } from '#lib/model/topic.ts';
import { readGroup } from './group.ts';
import { readShare } from './share.ts';

/** What a row's text says beside its topic. */
export interface Tail {
  text: string;
  share: number | null;
  unit?: ShareUnit;
  group?: string;
}

/** Parts a share, such as "(12 marks)", and a tier or option, such as "(HL only)", from a row's text, in any order. */
export function readTail(text: string): Tail {
  const first = readShare(text);
  const { text: rest, group } = readGroup(first.text);
  const { share, unit, text: plain } = first.share === null ? readShare(rest) : { ...first, text: rest };
  return {
    text: plain,
    share,
    ...(share !== null && unit !== 'parts' ? { unit } : {}),
    ...(group ? { group } : {}),
  };
}

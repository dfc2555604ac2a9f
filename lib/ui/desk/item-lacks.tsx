import { chanceAt } from '#lib/recall/memory.ts';
import { aimOf } from '#lib/recall/next-item.ts';
import { CHANCE_TO_SECURE, type Lack, lackOf } from '#lib/recall/secured.ts';
import { dayOf, examMoment } from '../derive/days.ts';
import type { Standing } from '../derive/next-up.ts';
import { percent, t, tn } from '../text.ts';

/** What an item that was tried still lacks to be secured, in words; nothing for one that was not tried. */
export function ItemLacks({ standing: { deck, progress }, id }: { standing: Standing; id: string }) {
  const { items, memories, clock, secured } = progress;
  const [item, memory] = [items.get(id), memories.get(id)];
  if (!item || !memory || memory.attempts === 0) return null;
  if (secured.has(id)) return <p class="soft">{t('itemSecured')}</p>;
  const aim = aimOf(Date.now(), examMoment(deck.course.examDay));
  const words = inWords(lackOf(item, memory, chanceAt(memory, clock, aim), dayOf));
  // At the very edge of the chance it may be secured since.
  return words.length === 0 ? null : <p class="soft">{t('itemLacks', words.join('; '))}</p>;
}

function inWords(lack: Lack): string[] {
  const words: string[] = [];
  if (lack.days > 0) words.push(tn('itemLacksDays', lack.days));
  else if (lack.latest) words.push(t('itemLacksLatest'));
  if (lack.forward) words.push(t('itemLacksForward'));
  if (lack.backToFront) words.push(t('itemLacksBackToFront'));
  // Days to come bring the chance up by themselves.
  if (lack.chance && lack.days === 0) words.push(t('itemLacksChance', percent(CHANCE_TO_SECURE)));
  return words;
}

import {
  type Item,
  type ItemKind,
  Line,
  Question,
  isAsked,
  itemOfLine,
  itemOfQuestion,
} from '#lib/model/item.ts';
import type { Db } from './schema.ts';

/** What names an item. */
export interface ItemName {
  kind: ItemKind;
  id: string;
}

const AsQuestion = Question.transform(itemOfQuestion);
const AsLine = Line.refine(isAsked).transform(itemOfLine);

/** Gives a row by its key, in a transaction that is open. */
export type Get = (store: 'questions' | 'lines', id: string) => Promise<unknown>;

/** The items behind names, by id, as they are now. Those that are gone, or cannot be read, are missing. */
export async function itemsBy(get: Get, names: readonly ItemName[]): Promise<Map<string, Item>> {
  const found = await Promise.all(
    names.map(async ({ kind, id }) =>
      kind === 'question'
        ? AsQuestion.safeParse(await get('questions', id)).data
        : AsLine.safeParse(await get('lines', id)).data,
    ),
  );
  return new Map(found.flatMap((item) => (item ? [[item.id, item]] : [])));
}

/** The same in a transaction of its own: what a round still has to ask, as it stands in the deck. */
export async function readItems(db: Db, names: readonly ItemName[]): Promise<Map<string, Item>> {
  const transaction = db.transaction(['questions', 'lines']);
  return itemsBy((store, id) => transaction.objectStore(store).get(id), names);
}

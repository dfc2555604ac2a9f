import type { OutlineRemark } from '../../outline-row.ts';
import type { CaseAssociation, CasePackage } from './package.ts';

/** Where each item of a package stands. */
export interface CaseParents {
  /** By place, the place of the item above; null directly under the document. */
  parents: (number | null)[];
  /** Its number among its siblings; Infinity where it has none. */
  sequence: number[];
  remarks: OutlineRemark[];
}

/** Under the document; under no known item; else the place of the item. */
type Above = 'document' | 'missing' | number;

/**
 * The item that each one stands under, by its isChildOf associations: from the child (origin) to what is above it
 * (destination), an item or the document. An item said to stand in several places stands in the first.
 */
export function parentsOf({ document, items, associations }: CasePackage): CaseParents {
  const placeOf = new Map<string, number>();
  for (const [i, { identifier, uri }] of [...items.entries()].reverse())
    for (const name of [identifier, uri]) if (name) placeOf.set(name, i);
  const find = ({ destinationNodeURI: link }: CaseAssociation): Above => {
    const names = [link?.identifier, link?.uri].filter((name) => name !== null && name !== undefined);
    if (names.some((name) => name !== '' && (name === document.identifier || name === document.uri)))
      return 'document';
    return names.flatMap((name) => placeOf.get(name) ?? [])[0] ?? 'missing';
  };
  const links = new Map<number, CaseAssociation[]>();
  for (const association of associations) {
    if (association.associationType !== 'isChildOf') continue;
    const { originNodeURI: origin } = association;
    const child = placeOf.get(origin?.identifier ?? '') ?? placeOf.get(origin?.uri ?? '');
    if (child !== undefined) links.set(child, [...(links.get(child) ?? []), association]);
  }
  const made: CaseParents = { parents: [], sequence: [], remarks: [] };
  for (const i of items.keys()) addItem(i, links.get(i) ?? [], find, made);
  return made;
}

function addItem(
  i: number,
  links: readonly CaseAssociation[],
  find: (link: CaseAssociation) => Above,
  { parents, sequence, remarks }: CaseParents,
): void {
  const places = links.map((link) => ({ above: find(link), sequence: link.sequenceNumber ?? Infinity }));
  const known = places.filter(({ above }) => above !== 'missing');
  const [first] = known.length > 0 ? known : places;
  if (first?.above === 'missing') remarks.push({ line: i + 1, about: 'no-parent' });
  if (new Set(known.map(({ above }) => above)).size > 1) remarks.push({ line: i + 1, about: 'two-parents' });
  parents.push(typeof first?.above === 'number' ? first.above : null);
  sequence.push(first?.sequence ?? Infinity);
}

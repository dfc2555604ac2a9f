/** An item of a package to be made: its parent by code, or null under the document. */
export interface ItemSpec {
  code: string;
  text: string;
  parent?: string | null;
  sequence?: number;
  short?: string;
  type?: string;
}

const MOMENT = '2026-01-05T09:00:00+00:00';
const idOf = (name: string): string => {
  const hex = [...name].map((letter) => letter.charCodeAt(0).toString(16)).join('');
  return `00000000-0000-4000-8000-${hex.padStart(12, '0').slice(-12)}`;
};
const uriOf = (name: string): string => `https://case.invalid/uri/${idOf(name)}`;
const link = (name: string) => ({ title: name, identifier: idOf(name), uri: uriOf(name) });

/** A CASE package of an invented course that holds all its schema asks for, and only the optional parts it is told. */
export function aPackage(items: readonly ItemSpec[], more: object = {}) {
  const CFItems = items.map(({ code, text, short, type }) => ({
    identifier: idOf(code),
    uri: uriOf(code),
    fullStatement: text,
    ...(code.startsWith('no-code') ? {} : { humanCodingScheme: code }),
    ...(short ? { abbreviatedStatement: short } : {}),
    ...(type ? { CFItemType: type } : {}),
    lastChangeDateTime: MOMENT,
  }));
  const CFAssociations = items.flatMap(({ code, parent = null, sequence }) => ({
    identifier: idOf(`${code}>`),
    uri: uriOf(`${code}>`),
    associationType: 'isChildOf',
    ...(sequence === undefined ? {} : { sequenceNumber: sequence }),
    originNodeURI: link(code),
    destinationNodeURI: link(parent ?? 'document'),
    lastChangeDateTime: MOMENT,
  }));
  const CFDocument = {
    identifier: idOf('document'),
    uri: uriOf('document'),
    creator: 'Ormscaith College',
    title: 'Foundation Oceanography',
    lastChangeDateTime: MOMENT,
  };
  return { CFDocument, CFItems, CFAssociations, ...more };
}

/** The items of a small framework, listed out of order. */
export const OCEAN: ItemSpec[] = [
  { code: '2', text: 'Tides', sequence: 2 },
  { code: '1.2', text: 'Group velocity', parent: '1', sequence: 2 },
  { code: '1', text: 'Surface waves', sequence: 1 },
  { code: '1.1.b', text: 'Explain what a dispersive wave is.', parent: '1.1', sequence: 2 },
  { code: '1.1', text: 'The dispersion relation', parent: '1', sequence: 1 },
  { code: '1.1.a', text: 'State the dispersion relation.', parent: '1.1', sequence: 1 },
];

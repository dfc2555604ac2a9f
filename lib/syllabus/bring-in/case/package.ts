import { z } from 'zod';
import { StudentError } from '#lib/model/student-error.ts';

// 1EdTech CASE 1.0 (2017-07-07) and 1.1 (2025-01-24), CFPackage: what is read of it. Both versions name these alike.
// Publishers leave out or blank what their schemas ask for: what can do without is taken without.

const Text = z.string().nullish().catch(undefined);
const Link = z.object({ identifier: Text, uri: Text }).nullish().catch(undefined);

const Item = z.object({
  identifier: Text,
  uri: Text,
  fullStatement: Text,
  abbreviatedStatement: Text,
  humanCodingScheme: Text,
  listEnumeration: Text,
  CFItemType: Text,
});
export type CaseItem = z.infer<typeof Item>;

const Association = z.object({
  associationType: Text,
  originNodeURI: Link,
  destinationNodeURI: Link,
  sequenceNumber: z.number().nullish().catch(undefined),
});
export type CaseAssociation = z.infer<typeof Association>;

const Package = z.object({
  CFDocument: z.object({ identifier: Text, uri: Text, title: Text }).nullish().catch(undefined),
  CFItems: z.array(Item).nullish(),
  CFAssociations: z.array(Association).nullish(),
});

export interface CasePackage {
  document: { identifier: string; uri: string; title: string };
  items: CaseItem[];
  associations: CaseAssociation[];
}

/** Far more than the longest framework has. */
const MOST_CHARACTERS = 40_000_000;

/** Whether a text is JSON that names what a CASE package holds; its end may be missing. */
export const looksLikeCase = (text: string): boolean =>
  /^\ufeff?\s*\{/.test(text) && /"(?:CFPackage|CFDocument|CFItems)"\s*:/.test(text);

/**
 * Reads a CFPackage, bare or wrapped as {"CFPackage": …}.
 * Errors: StudentError `errorSyllabusTooLarge`; `errorCaseBroken` for JSON that does not parse; `errorCaseNone` where
 * it is no package, or one without items.
 */
export function parsePackage(text: string): CasePackage {
  if (text.length > MOST_CHARACTERS) {
    throw new StudentError('errorSyllabusTooLarge', text.length, MOST_CHARACTERS);
  }
  const json = parseJson(text.replace(/^\ufeff/, ''));
  const wrapped = z.object({ CFPackage: z.unknown() }).safeParse(json).data?.CFPackage;
  const read = Package.safeParse(wrapped ?? json);
  const items = read.data?.CFItems ?? [];
  if (!read.data || items.length === 0) throw new StudentError('errorCaseNone');
  const { CFDocument: document, CFAssociations: associations } = read.data;
  return {
    document: {
      identifier: document?.identifier ?? '',
      uri: document?.uri ?? '',
      title: (document?.title ?? '').trim(),
    },
    items,
    associations: associations ?? [],
  };
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new StudentError('errorCaseBroken');
  }
}

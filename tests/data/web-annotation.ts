/**
 * What the W3C Web Annotation Data Model (Recommendation of 23 February 2017, w3.org/TR/annotation-model) asks for, as
 * zod schemas written from its sections 3.1 to 3.3, 4.1, 4.2 and 5.1 to 5.2: its MUSTs, with the SHOULDs of collections. Compared
 * with the JSON schemas of the web platform tests for it (annotation-model/definitions/collections.json).
 */
import { z } from 'zod';

/** The IRI of the context, section 3.1. */
export const CONTEXT = 'http://www.w3.org/ns/anno.jsonld';

const Iri = z.string().regex(/^[a-z][a-z\d+.-]*:\S+$/i);

/** "MUST be expressed in UTC, with the Z": section 3.3.1. */
const Moment = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/);

/** Motivations that the vocabulary defines: section 3.3.5. */
const Motivation = z.enum(
  'assessing bookmarking classifying commenting describing editing highlighting identifying linking moderating questioning replying tagging'.split(
    ' ',
  ),
);

const TextualBody = z.object({
  type: z.literal('TextualBody'),
  value: z.string(),
  format: z.string().optional(),
  purpose: Motivation.optional(),
});
const ExternalResource = z.object({
  id: Iri,
  type: z.enum(['Dataset', 'Image', 'Video', 'Sound', 'Text']).optional(),
  format: z.string().optional(),
  rights: Iri.optional(),
  creator: z.object({ type: z.enum(['Person', 'Organization', 'Software']), name: z.string() }).optional(),
});

const Xpath = z.object({ type: z.literal('XPathSelector'), value: z.string(), refinedBy: z.unknown() });
const Selector = z.discriminatedUnion('type', [
  z.object({
    type: z.literal('TextQuoteSelector'),
    exact: z.string(),
    prefix: z.string().optional(),
    suffix: z.string().optional(),
  }),
  z.object({
    type: z.literal('TextPositionSelector'),
    start: z.number().int().nonnegative(),
    end: z.number().int().nonnegative(),
  }),
  z.object({ type: z.literal('RangeSelector'), startSelector: Xpath, endSelector: Xpath }),
  z.object({ type: z.literal('FragmentSelector'), value: z.string(), conformsTo: Iri.optional() }),
]);
const SpecificResource = z.object({
  type: z.literal('SpecificResource'),
  source: z.union([Iri, ExternalResource]),
  selector: z.array(Selector).optional(),
});

export const AnnotationModel = z.object({
  id: Iri,
  type: z.literal('Annotation'),
  motivation: Motivation.optional(),
  created: Moment.optional(),
  modified: Moment.optional(),
  body: z.array(z.union([TextualBody, ExternalResource])).optional(),
  target: z.union([Iri, SpecificResource, ExternalResource]),
});

export const PageModel = z.object({
  id: Iri,
  type: z.literal('AnnotationPage'),
  partOf: Iri,
  startIndex: z.number().int().nonnegative(),
  items: z.array(AnnotationModel).min(1),
});

export const CollectionModel = z.object({
  '@context': z.literal(CONTEXT),
  id: Iri,
  type: z.literal('AnnotationCollection'),
  label: z.string(),
  created: Moment.optional(),
  total: z.number().int().nonnegative(),
  first: PageModel,
  last: Iri,
});

/**
 * The terms of the context that are keys, and its prefixes: read in jsonld/anno.jsonld of the working group's repository
 * (w3c/web-annotation). A key that is no term of it means nothing to a reader of JSON-LD.
 */
export const TERMS = new Set(
  (
    '@context id type body target source selector state scope refinedBy startSelector endSelector renderedVia creator generator rights ' +
    'motivation purpose homepage via canonical stylesheet cached conformsTo items partOf first last next prev audience ' +
    'bodyText format language created modified generated text value start end exact prefix suffix sourceDate ' +
    'sourceDateStart sourceDateEnd styleClass name email email_sha1 account label total startIndex'
  ).split(' '),
);
export const PREFIXES = 'oa dc dcterms dctypes foaf rdf rdfs skos xsd iana owl as schema'.split(' ');

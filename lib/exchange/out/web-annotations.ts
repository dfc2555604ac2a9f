import type { Clip } from '#lib/model/clip.ts';
import type { Source } from '#lib/model/source.ts';
import type { OutPicture } from './out-words.ts';
import { type OutSection, headingOf } from './sections.ts';

/** The JSON-LD context of the W3C Web Annotation Vocabulary. */
const CONTEXT = 'http://www.w3.org/ns/anno.jsonld';

export interface AnnotationsInput {
  /** What the collection is called. */
  label: string;
  /** The collection's own name; the page's is made from it. A random identifier. */
  id: string;
  sections: readonly OutSection[];
  /** The word for a clip that must be returned to, as a tag. */
  unclear: string;
  /** By id; pictures that are gone are not in it. */
  pictures: ReadonlyMap<string, OutPicture>;
  /** Epoch milliseconds. */
  savedAt: number;
  /** A moment as ISO 8601 in UTC, ending in Z. */
  timeOf(at: number): string;
}

/**
 * Clips as an AnnotationCollection of the W3C Web Annotation Data Model (Recommendation of 23 February 2017): each clip
 * is an Annotation whose target is the passage in its source, as the clip's selectors describe it, and whose bodies are
 * the student's own words, the passage as it was kept, its pictures (as data URLs), and tags with the topics.
 */
export function webAnnotations(input: AnnotationsInput): object {
  const names = new Map(
    input.sections.flatMap(({ topic }) => (topic ? [[topic.id, headingOf(topic)] as const] : [])),
  );
  const items = input.sections.flatMap(({ clips }) =>
    clips.map(({ clip, source }) => annotationOf(clip, source, names, input)),
  );
  const id = `urn:uuid:${input.id}`;
  const page = `${id}#page-1`;
  return {
    '@context': CONTEXT,
    id,
    type: 'AnnotationCollection',
    label: input.label,
    created: input.timeOf(input.savedAt),
    total: items.length,
    // A page has at least one annotation: a collection of none has no page.
    ...(items.length > 0
      ? { first: { id: page, type: 'AnnotationPage', partOf: id, startIndex: 0, items }, last: page }
      : {}),
  };
}

function annotationOf(
  clip: Clip,
  source: Source | null,
  names: ReadonlyMap<string, string>,
  { unclear, pictures, timeOf }: AnnotationsInput,
): object {
  const ownWords = clip.ownWords.trim();
  const tags = [...clip.topicIds.map((topicId) => names.get(topicId)), clip.unclear ? unclear : undefined];
  const body = [
    ...(ownWords === '' ? [] : [{ ...textual(ownWords, 'text/plain'), purpose: 'describing' }]),
    ...(clip.html === '' ? [] : [textual(clip.html, 'text/html')]),
    ...clip.pictureIds.flatMap((pictureId) => {
      const picture = pictures.get(pictureId);
      return picture ? [imageOf(picture)] : [];
    }),
    ...tags.flatMap((tag) => (tag ? [{ ...textual(tag, 'text/plain'), purpose: 'tagging' }] : [])),
  ];
  return {
    id: `urn:uuid:${clip.id}`,
    type: 'Annotation',
    motivation: ownWords === '' ? 'highlighting' : 'describing',
    created: timeOf(clip.createdAt),
    modified: timeOf(clip.changedAt),
    ...(body.length > 0 ? { body } : {}),
    target: targetOf(clip, source),
  };
}

const textual = (value: string, format: string) => ({ type: 'TextualBody', value, format });

const imageOf = ({ address }: OutPicture) => ({
  id: address,
  type: 'Image',
  format: address.slice('data:'.length, address.indexOf(';')),
});

function targetOf({ sourceId, selectors }: Clip, source: Source | null): object {
  const described = source ? sourceOf(source) : { id: `urn:uuid:${sourceId}` };
  return selectors.length > 0
    ? { type: 'SpecificResource', source: described, selector: selectors }
    : described;
}

/** A source as an External Web Resource; its title by the term that the context's prefix gives. */
function sourceOf({ url, kind, title, author, licence }: Source): object {
  return {
    id: url,
    type: kind === 'video' ? 'Video' : 'Text',
    ...(kind === 'pdf' ? { format: 'application/pdf' } : {}),
    ...(title ? { 'dc:title': title } : {}),
    ...(author ? { creator: { type: 'Person', name: author } } : {}),
    ...(licence ? { rights: licence } : {}),
  };
}

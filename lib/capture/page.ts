import { type Page, readPlace } from './page/place.ts';
import { readProvenance } from './page/provenance.ts';

export type { Page } from './page/place.ts';

/**
 * Reads all that a page says of itself: address, title, site, author, day of publication and licence.
 *
 * @throws StudentError `errorPageAddress` when its address is none of http, https and file, or is too long to keep
 */
export const readPage = (doc: Document): Page => ({ ...readPlace(doc), ...readProvenance(doc) });

/**
 * What the official JSON schemas of 1EdTech CASE require of a CFPackage, from the "required" lists of the payload of
 * getCFPackage: version 1.0 (IMS final release, 2017-07-07) and version 1.1 (1EdTech final release, 2025-01-24,
 * getCFPackage-200-responsepayload-schema.json). Both versions require the same of these.
 */
export const CASE_REQUIRED = {
  package: ['CFDocument'],
  document: ['identifier', 'uri', 'creator', 'title', 'lastChangeDateTime'],
  item: ['identifier', 'fullStatement', 'uri', 'lastChangeDateTime'],
  association: [
    'identifier',
    'associationType',
    'uri',
    'originNodeURI',
    'destinationNodeURI',
    'lastChangeDateTime',
  ],
  link: ['title', 'identifier', 'uri'],
} as const;

/** Attributes that version 1.1 added to these, all optional. */
export const CASE_NEW_IN_1_1 = {
  document: { frameworkType: 'course', caseVersion: '1.1' },
  item: { subject: ['Oceanography'] },
  association: { notes: 'by hand' },
} as const;

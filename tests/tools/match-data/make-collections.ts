// Makes the labelled collections in tests/data/match from Debian's packages. Needed only to make them anew:
// node tests/tools/match-data/make-collections.ts
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { collectionFile } from './collection-file.ts';
import { withDebianPackage } from './debian-package.ts';
import { readFoldoc } from './foldoc.ts';
import { readWebster } from './webster.ts';

const folder = new URL('../../data/match/', import.meta.url).pathname;

/** A dictionary of dictd's is a gzip file that can also be read piece by piece. */
const dictionary = (unpacked: string, name: string): string =>
  gunzipSync(readFileSync(join(unpacked, 'usr/share/dictd', `${name}.dict.dz`))).toString('utf8');

const foldoc = withDebianPackage('dict-foldoc', '20230119-1', (at) => readFoldoc(dictionary(at, 'foldoc')));
const webster = withDebianPackage('dict-gcide', '0.48.5+nmu2', (at) => readWebster(dictionary(at, 'gcide')));

const bounds = { leastInTest: 12, mostInTrain: 25, mostInTest: 40 };
writeFileSync(join(folder, 'foldoc.tsv'), collectionFile(foldoc.topics, foldoc.passages, bounds));
writeFileSync(join(folder, 'webster.tsv'), collectionFile(webster.topics, webster.passages, bounds));

import { firstDeck } from './001-first-deck.ts';
import { picturesAndFiles } from './002-pictures-and-files.ts';
import { tiersAndUnits } from './003-tiers-and-units.ts';
import { statementsAndLessons } from './004-statements-and-lessons.ts';
import { notes } from './005-notes.ts';
import { emptyDeck } from './migration.ts';

/** Every migration there is. The last one's `to` is the version of the database. */
export const migrations = emptyDeck
  .then(firstDeck)
  .then(picturesAndFiles)
  .then(tiersAndUnits)
  .then(statementsAndLessons)
  .then(notes);

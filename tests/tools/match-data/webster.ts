import type { CollectedPassage, CollectedTopic } from './collection-file.ts';

/**
 * The subjects, each with the labels that the dictionary prints for it and the word under which it says what the
 * subject is. Labels of history, of single countries' law and of games are left out: they have no such word.
 */
const SUBJECTS: readonly (readonly [word: string, ...labels: string[]])[] = [
  ['Agriculture', 'Agric'],
  ['Algebra', 'Alg'],
  ['Anatomy', 'Anat'],
  ['Architecture', 'Arch'],
  ['Arithmetic', 'Arith'],
  ['Astrology', 'Astrol'],
  ['Astronomy', 'Astron'],
  ['Biology', 'Biol'],
  ['Botany', 'Bot'],
  ['Carpentry', 'Carp'],
  ['Chemistry', 'Chem'],
  ['Cookery', 'Cookery'],
  ['Crystallography', 'Crystallog'],
  ['Ecclesiastical', 'Eccl'],
  ['Electricity', 'Elec'],
  ['Falconry', 'Falconry'],
  ['Farriery', 'Far'],
  ['Fencing', 'Fencing'],
  ['Fortification', 'Fort'],
  ['Founding', 'Founding'],
  ['Geology', 'Geol'],
  ['Geometry', 'Geom'],
  ['Grammar', 'Gram'],
  ['Gunnery', 'Gun', 'Gunnery'],
  ['Heraldry', 'Her'],
  ['Horticulture', 'Hort'],
  ['Law', 'Law'],
  ['Logic', 'Logic'],
  ['Machinery', 'Mach'],
  ['Manege', 'Man'],
  ['Masonry', 'Masonry'],
  ['Mathematics', 'Math'],
  ['Mechanics', 'Mech'],
  ['Medicine', 'Med'],
  ['Metallurgy', 'Metal', 'Metallurgy'],
  ['Metaphysics', 'Metaph'],
  ['Meteorology', 'Meteor', 'Meteorol'],
  ['Military', 'Mil'],
  ['Mineralogy', 'Min'],
  ['Mining', 'Mining'],
  ['Music', 'Mus'],
  [
    'Mythology',
    'Myth',
    'Class. Myth',
    'Gr. Myth',
    'Greek Myth',
    'Rom. Myth',
    'Scand. Myth',
    'Hind. Myth',
    'Hindu Myth',
  ],
  ['Nautical', 'Naut'],
  ['Optics', 'Opt', 'Optics'],
  ['Painting', 'Paint', 'Painting'],
  ['Paleontology', 'Paleon'],
  ['Pharmacy', 'Pharm', 'Pharmacy'],
  ['Philology', 'Philol'],
  ['Philosophy', 'Philos'],
  ['Phonetics', 'Phon', 'Phonetics'],
  ['Photography', 'Photog'],
  ['Phrenology', 'Phren'],
  ['Physics', 'Physics'],
  ['Printing', 'Print', 'Printing'],
  ['Prosody', 'Pros'],
  ['Railroad', 'Railroad', 'Railroads'],
  ['Rhetoric', 'Rhet'],
  ['Sculpture', 'Sculp'],
  ['Shipbuilding', 'Shipbuilding'],
  ['Surgery', 'Surg'],
  ['Surveying', 'Surv', 'Surveying'],
  ['Theology', 'Theol'],
  ['Trigonometry', 'Trig'],
  ['Weaving', 'Weaving'],
  ['Zoology', 'Zool'],
];

const ENTRY = /\n(?=\S)/;
const SOURCE = '[1913 Webster]';
/** The line that names the word: how it is said, what part of speech it is and its plural. */
const HEAD_LINE =
  /^[^\\]*\\[^\\]+\\.*?\b(?:n|a|v\. t|v\. i|adv)\.(?:; pl\. \{[^{}]*\}(?: \([^()]*\))?[.,]?)?(?=\s|$)/;
const SENSE = /^\s*(?:pl\. )?(?:\d+\.\s*)?(?:\(([A-Z][\w&. ]*)\))?\s*(.*)$/;
/** A quotation (set in further), a phrase with the word in it, a note. */
const ASIDE = /^\n*(?: {9}|\s*(?:\{|Note:|Syn:))/;
/** How many of a subject's own senses its topic takes: the first one may be an old or general one. */
const SENSES_OF_SUBJECT = 2;

/**
 * Reads the senses of Webster's Revised Unabridged Dictionary of 1913, as Debian's dict-gcide holds them: only
 * those marked as that book's own, which is out of copyright.
 */
export function readWebster(dictionary: string): { topics: CollectedTopic[]; passages: CollectedPassage[] } {
  const senses = dictionary.split(ENTRY).flatMap(sensesOf);
  const topics = SUBJECTS.map(([word]) => ({ title: word, text: ownText(senses, word) }));
  const passages = senses.flatMap(({ head, label, text }) => {
    const own = label.split(' & ').map((one) => one.replace(/\.$/, ''));
    const places = [...SUBJECTS.keys()].filter((i) => own.some((one) => SUBJECTS[i]!.slice(1).includes(one)));
    const [first] = places;
    // Not the subject's own definition: that is what the topic says.
    return first === undefined || SUBJECTS.some(([word]) => word === head)
      ? []
      : [{ topics: places, head, text }];
  });
  return { topics, passages };
}

interface Sense {
  head: string;
  label: string;
  text: string;
}

function ownText(senses: readonly Sense[], word: string): string {
  const own = senses.filter(({ head, text }) => head === word && text.includes(' '));
  return own
    .slice(0, SENSES_OF_SUBJECT)
    .map(({ text }) => text)
    .join(' ');
}

function sensesOf(entry: string): Sense[] {
  const head = /^([^\\\n]+?)\s*\\/.exec(entry)?.[1];
  if (!head) return [];
  return entry.split(/\n\s*\n|(?<=\[1913 Webster\])\n/).flatMap((paragraph) => {
    const line = paragraph.replace(/\s+/g, ' ').trim();
    if (!line.endsWith(SOURCE) || ASIDE.test(paragraph)) return [];
    const body = withoutBrackets(line.slice(0, -SOURCE.length)).replace(HEAD_LINE, '');
    const [, label, text] = SENSE.exec(body) ?? [];
    return text && !text.includes('\\') ? [{ head, label: label ?? '', text: plain(text) }] : [];
  });
}

/** Letters that the dictionary spells in brackets as letters; where the word comes from and how it is used, gone. */
function withoutBrackets(line: string): string {
  const spelled = line.replace(/\[(ae|oe)\]/g, '$1').replace(/\[[^a-z\]]?([a-z])[^a-z\]]?\]/g, '$1');
  const without = spelled.replace(/\[[^[\]]*\]/g, ' ');
  return without === spelled ? spelled.replace(/\s+/g, ' ') : withoutBrackets(without);
}

/** Without braces, further labels, and the name of who is quoted. */
function plain(text: string): string {
  return text
    .replace(/\([A-Z][\w&. ]*\.\)/g, ' ')
    .replace(/\s--\s?[A-Z]\S*[*"`].*$/, '')
    .replace(/\s--[A-Z][\w.' ]*$/, '')
    .replace(/[{}]/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}

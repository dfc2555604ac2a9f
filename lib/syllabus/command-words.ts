/**
 * Command words: the verbs that open an assessable point of a syllabus or an exam question.
 * Source: common practice in exam syllabuses and mark schemes; no single board's list.
 */

/** Command words that hardly ever name a subject themselves. */
const PLAIN = `analyse analyze apply appreciate argue arrange ascertain assess calculate categorise categorize choose
  cite clarify classify comment compare compile compute conclude consider construct convert create criticise
  criticize critique decide deduce define demonstrate derive describe determine devise differentiate discriminate
  discuss distinguish draw elaborate enumerate estimate evaluate examine explain explore express extract find
  formulate generate give handle hypothesise hypothesize identify illustrate implement indicate infer interpret
  investigate judge justify know locate memorise memorize obtain organise organize outline perform predict
  prepare produce propose prove quote recall recognise recognize reflect relate represent restate
  rewrite select show solve specify suggest summarise summarize tabulate translate understand use utilise utilize
  validate verify write`;

/** Command words that are as often a noun or an adjective: "State functions", "Graphs of functions". */
const DOUBLE = `account act add analysis balance build check combine complete condense contrast decompose design
  develop divide eliminate expand factor factorise factorize fit form graph integrate label list make map match
  measure model multiply name order plan plot present rank read rearrange record reduce resolve restrict review set simplify
  sketch sort state subtract test trace transform view work`;

const wordsOf = (list: string): ReadonlySet<string> => new Set(list.split(/\s+/));

export const PLAIN_COMMAND_WORDS = wordsOf(PLAIN);
export const DOUBLE_COMMAND_WORDS = wordsOf(DOUBLE);

/** Whether a word (in any case) can open an assessable point. */
export function isCommandWord(word: string): boolean {
  const lower = word.toLowerCase();
  return PLAIN_COMMAND_WORDS.has(lower) || DOUBLE_COMMAND_WORDS.has(lower);
}

/** Whether a word in small letters is a command word that names no subject, also as "describes" or "described". */
export function isPlainCommand(word: string): boolean {
  if (PLAIN_COMMAND_WORDS.has(word)) return true;
  return /[^s]s$|ed$/.test(word) && [1, 2].some((cut) => PLAIN_COMMAND_WORDS.has(word.slice(0, -cut)));
}

const LEAD =
  /^(?:(?:(?:i|you|we|candidates?|students?|learners?)\s+)?(?:should\s+|must\s+|will\s+)?(?:be able to|can)\s+)?/i;

/** The text of a statement without the command that opens it: what is left is its subject. */
export function withoutCommand(statement: string): string {
  const body = statement.replace(LEAD, '');
  const first = /^\p{L}+/u.exec(body)?.[0] ?? '';
  return isCommandWord(first) ? body.slice(first.length) : body;
}

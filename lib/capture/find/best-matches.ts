import search, { type Match } from 'approx-string-match';

/** A pattern of more units is sought with few errors first: the fewer the search may allow, the quicker it is. */
const LONG = 96;
const FEW = 1 / 3;

/** All places of the pattern with the fewest errors, up to `most` of them. */
export function bestMatches(text: string, pattern: string, most: number): Match[] {
  const equal = equalMatches(text, pattern);
  if (equal.length > 0) return equal;
  const found = pattern.length > LONG ? search(text, pattern, Math.floor(most * FEW)) : [];
  return found.length > 0 ? found : search(text, pattern, most);
}

function equalMatches(text: string, pattern: string): Match[] {
  const matches: Match[] = [];
  for (let start = text.indexOf(pattern); start >= 0; start = text.indexOf(pattern, start + 1))
    matches.push({ start, end: start + pattern.length, errors: 0 });
  return matches;
}

/**
 * Places of rows whose code stands before an earlier row, too. Codes such as "2.1" are one of a kind in the whole
 * syllabus, others, such as "(a)", under one row only.
 */
export function repeatedCodes(rows: readonly { code: string }[], parents: readonly number[]): number[] {
  const seen = new Set<string>();
  const repeated: number[] = [];
  rows.forEach(({ code }, i) => {
    if (code === '') return;
    const key = code.includes('.') ? code : `${parents[i] ?? -1} ${code}`;
    if (seen.has(key)) repeated.push(i);
    seen.add(key);
  });
  return repeated;
}

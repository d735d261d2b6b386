/** Edit distance that counts a swap of neighbours as one (Damerau 1964, optimal string alignment). */
function editDistance(a: string, b: string): number {
  const rows = [...a];
  const columns = [...b];
  let before: number[] = [];
  let above = Array.from({ length: columns.length + 1 }, (_, j) => j);
  rows.forEach((letter, i) => {
    const here = [i + 1];
    columns.forEach((other, j) => {
      const step = letter === other ? 0 : 1;
      let least = Math.min((above[j + 1] ?? 0) + 1, (here[j] ?? 0) + 1, (above[j] ?? 0) + step);
      if (i > 0 && j > 0 && letter === columns[j - 1] && rows[i - 1] === other) {
        least = Math.min(least, (before[j - 1] ?? 0) + 1);
      }
      here.push(least);
    });
    before = above;
    above = here;
  });
  return above[columns.length] ?? 0;
}

/**
 * The tail of a message about an unknown name: `; did you mean “x”?` for the nearest candidate, or nothing
 * where none is near (more than a third of the letters differ, three at most). Case does not count.
 */
export function suggestion(word: string, candidates: readonly string[]): string {
  const wanted = word.toLowerCase();
  let best = '';
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const distance = editDistance(wanted, candidate.toLowerCase());
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  const limit = Math.min(3, Math.max(1, Math.floor(Math.max(wanted.length, best.length) / 3)));
  return best !== '' && wanted !== '' && least <= limit ? `; did you mean “${best}”?` : '';
}

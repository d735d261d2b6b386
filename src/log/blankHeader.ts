import { findHead, isComment, type TableHead } from './headerRow.ts';

/**
 * The head of a table whose columns are parted by blanks. Its names may hold single blanks themselves
 * (`Altitude (ft)`), so the line is read in the first of three ways that gives `width` names: parted at every
 * blank, at two blanks or a tab, or with bracketed units joined to the word before them.
 */
export function blankHeader(
  text: string,
  rows: readonly (readonly string[])[],
  width: number,
): TableHead | null {
  const lines = text.split('\n', rows.length);
  const head = findHead(rows, width);
  if (head === null || head.firstData === 0) return head;
  const candidates = [head.firstData - 1, head.firstData - 2]
    .map((i) => lines[i] ?? '')
    .filter((line) => line.trim() !== '');
  const named = (line: string): string[] | null => {
    const bare = line.trim().replace(isComment(line) ? /^\s*\S+?\s+|^\s*#/u : /^/u, '');
    const ways = [
      bare.split(/\s+/u),
      bare.split(/\s{2,}|\t/u),
      bare.replace(/\s+([[(][^\])]*[\])])/gu, '\u00a0$1').split(/[ \t]+/u),
    ];
    return (
      ways.find((names) => names.length === width)?.map((name) => name.replaceAll('\u00a0', ' ')) ?? null
    );
  };
  const [near, far] = candidates;
  const nearNames = near === undefined ? null : named(near);
  if (head.units !== null && far !== undefined) {
    return { ...head, headers: named(far) ?? head.headers, units: nearNames ?? head.units };
  }
  return { ...head, headers: nearNames ?? head.headers };
}

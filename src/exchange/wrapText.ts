/**
 * One paragraph broken at spaces into lines of at most `width` characters; a word that is longer than a line is
 * cut. Lines after the first begin with `hang` (counted in the width). The text must be a single line.
 */
export function wrapText(text: string, width: number, hang = ''): string[] {
  const lines: string[] = [];
  let line = '';
  const room = () => width - (lines.length > 0 ? hang.length : 0);
  for (let word of text.split(/ +/u)) {
    if (word === '') continue;
    if (line !== '' && length(line) + 1 + length(word) > room()) {
      lines.push(line);
      line = '';
    }
    while (length(word) > room()) {
      const letters = [...word];
      const cut = Math.max(1, room());
      lines.push(letters.slice(0, cut).join(''));
      word = letters.slice(cut).join('');
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(line);
  return lines.map((l, i) => (i === 0 ? l : hang + l));
}

/** Characters as a terminal counts them, near enough: code points that are not combining marks. */
export function length(text: string): number {
  return [...text.replace(/\p{Mn}/gu, '')].length;
}

/** The text, cut to `width` characters with an ellipsis where it is longer. */
export function cutText(text: string, width: number): string {
  return length(text) <= width ? text : `${[...text].slice(0, Math.max(0, width - 1)).join('')}…`;
}

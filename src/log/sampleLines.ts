import { isComment } from './headerRow.ts';

/** A text, or bytes that can be looked at like one. */
export type TextLike = Pick<string, 'length' | 'indexOf' | 'slice'>;

/** The part of a text in which its head is looked for. */
export const HEAD_CHARACTERS = 2_000_000;
const SAMPLE_LINES = 200;
/** Where samples are taken, as shares of the whole. */
export const SAMPLE_SHARES = [0, 0.25, 0.5, 0.75, 0.95] as const;

/** Lines from the beginning, the middle and the end, without blank ones and comments. */
export function sampleLines(text: TextLike): string[] {
  const lines: string[] = [];
  const take = (from: number, most: number): void => {
    let at = from;
    for (let k = 0; k < most && at < text.length; ) {
      const found = text.indexOf('\n', at);
      const end = found < 0 ? text.length : found;
      const line = end - at < HEAD_CHARACTERS ? text.slice(at, end) : '';
      const blank = end - at < HEAD_CHARACTERS && line.trim() === '';
      // Blank lines do not count, but a million of them must not take long either.
      k += blank ? 0.02 : 1;
      if (line !== '' && !blank && !isComment(line)) lines.push(line);
      if (found < 0) return;
      at = end + 1;
    }
  };
  take(0, SAMPLE_LINES);
  for (const share of SAMPLE_SHARES.slice(1)) {
    const start = text.indexOf('\n', Math.floor(text.length * share));
    if (start >= 0) take(start + 1, SAMPLE_LINES / 4);
  }
  return lines;
}

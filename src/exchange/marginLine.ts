import { numberText } from './figureText.ts';
import { valueAt } from './sampleAt.ts';

const above = ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'] as const;
const below = ['░', '▒', '▓'] as const;
const missing = '·';

/** A curve drawn in one line of characters, and the time axis to stand under it. */
export interface MarginLine {
  /** One character a column: ▁ to █ for values from zero up, ░ ▒ ▓ for values under zero, · where there is none. */
  readonly bar: string;
  /** Ends of the time axis and, marked by ▲, the moment orbit was lost. */
  readonly axis: string;
}

/**
 * Draws a curve over time in one line.
 * @param time_s rising times, s
 * @param values the curve at those times; null = not available there
 * @param lostAt_s the moment to mark, s; null = none
 * @param width characters a line may take
 */
export function marginLine(
  time_s: readonly number[],
  values: readonly (number | null)[],
  lostAt_s: number | null,
  width: number,
): MarginLine {
  const start = time_s[0] ?? 0;
  const end = time_s[time_s.length - 1] ?? start;
  const sampled = Array.from({ length: width }, (_, column) =>
    valueAt(time_s, values, start + ((column + 0.5) / width) * (end - start)),
  );
  const known = sampled.filter((v) => v !== null);
  const highest = Math.max(0, ...known);
  const lowest = Math.min(0, ...known);
  const bar = sampled.map((v) => {
    if (v === null) return missing;
    return v >= 0 ? step(above, v, highest) : step(below, v, lowest);
  });
  return { bar: bar.join(''), axis: timeAxis(start, end, lostAt_s, width) };
}

function step(marks: readonly string[], value: number, extreme: number): string {
  const share = extreme === 0 ? 0 : value / extreme;
  return marks[Math.min(marks.length - 1, Math.max(0, Math.ceil(share * marks.length) - 1))] ?? missing;
}

function timeAxis(start: number, end: number, lostAt_s: number | null, width: number): string {
  const [left, right] = [`${numberText(start, 0)} s`, `${numberText(end, 0)} s`];
  const line = [...left.padEnd(Math.max(0, width - right.length)), ...right].slice(0, width);
  if (lostAt_s === null || !(end > start)) return line.join('');
  const column = Math.min(width - 1, Math.max(0, Math.floor(((lostAt_s - start) / (end - start)) * width)));
  const label = `${numberText(lostAt_s, 0)} s`;
  const free = (from: number, to: number) =>
    from >= 0 && to <= width && line.slice(from, to).every((c) => c === ' ');
  // A mark inside the left label takes its place, for it tells the same moment.
  if (column < left.length) line.fill(' ', 0, left.length);
  line[column] = '▲';
  const after = column + 2;
  const before = column - 1 - label.length;
  if (free(column + 1, after + label.length + 1)) line.splice(after, label.length, ...label);
  else if (free(before - 1, column)) line.splice(before, label.length, ...label);
  return line.join('').trimEnd();
}

import { readFileSync } from 'node:fs';
import { join } from 'node:path';

interface Sample {
  readonly id: string;
  readonly title: string;
  readonly log: string;
  readonly card: string | null;
  readonly note: string;
}

/** The sample flights as the page is given them. */
export const samples = JSON.parse(readFileSync('sample-logs/index.json', 'utf8')) as readonly Sample[];

/** The flight that ran dry short of orbit: every part of the review screen has something to show for it. */
export function shortFlight(): Sample {
  const found = samples.find((s) => s.log === 'bobstay-medlar-4.csv');
  if (found === undefined) throw new Error('sample-logs/index.json does not list bobstay-medlar-4.csv');
  return found;
}

/** Path of a sample's file. */
export function samplePath(file: string): string {
  return join('sample-logs', file);
}

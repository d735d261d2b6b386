import { readFileSync } from 'node:fs';
import { seededRandom } from '../src/attempts/seededRandom.ts';
import { buildFlight } from '../src/flight/buildFlight.ts';
import type { Flight } from '../src/flight/types.ts';
import { readLog } from '../src/log/readLog.ts';
import { readMission } from '../src/mission/readCard.ts';

const folder = new URL('../sample-logs/', import.meta.url);

/** A sample's text and card. */
export function sampleText(name: string): string {
  return readFileSync(new URL(name, folder), 'utf8');
}

/** A flight from a log's text. */
export async function flightOf(text: string, card?: string): Promise<Flight> {
  const log = await readLog(new TextEncoder().encode(text), { name: 'test.csv' });
  return buildFlight(log, readMission(card === undefined ? {} : { card: { name: 'card', text: card } }));
}

/** A table's columns with normal noise added to some of them, by header. */
export function shaken(text: string, sigmas: Readonly<Record<string, number>>, seed: number): string {
  const random = seededRandom(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const [head = '', ...rows] = text.trimEnd().split('\n');
  const headers = head.split(',');
  const made = rows.map((row) =>
    row
      .split(',')
      .map((cell, c) => {
        const sigma = sigmas[headers[c] ?? ''];
        return sigma === undefined ? cell : (Number(cell) + sigma * normal()).toFixed(3);
      })
      .join(','),
  );
  return [head, ...made].join('\n');
}

/** A table with only some of its columns. */
export function onlyColumns(text: string, keep: readonly string[]): string {
  const lines = text.trimEnd().split('\n');
  const headers = lines[0]!.split(',');
  const kept = keep.map((name) => headers.indexOf(name));
  return lines
    .map((line) => {
      const cells = line.split(',');
      return kept.map((k) => cells[k]).join(',');
    })
    .join('\n');
}

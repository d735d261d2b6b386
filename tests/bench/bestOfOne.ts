import { readFileSync } from 'node:fs';
import { readMission } from '../../src/mission/readCard.ts';
import { bestAscent } from '../../src/refly/bestAscent.ts';
import { flyAscent } from '../../src/refly/flownAscent.ts';
import { rocketOf } from '../../src/refly/rocketOf.ts';

/** A search for the best ascent and one flight of what it found, in CPU milliseconds. */
export interface BestOfOne {
  readonly search_ms: number;
  readonly trials: number;
  readonly flight_ms: number;
}

/** @param cardFile path of a mission card */
export function bestOfOne(cardFile: string): BestOfOne {
  const text = readFileSync(cardFile, 'utf8');
  const mission = readMission({ card: { name: cardFile, text } });
  const spent = (work: () => void): number => {
    const from = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(from);
    return (user + system) / 1000;
  };
  let found = bestAscent(mission);
  const search_ms = spent(() => {
    found = bestAscent(mission);
  });
  if (found.kind !== 'found') throw new Error(`no best ascent of ${cardFile}`);
  const { shape, trials } = found;
  const { rocket } = rocketOf(mission.vehicle!);
  const flights = 20;
  const flight_ms =
    spent(() => {
      for (let i = 0; i < flights; i++) flyAscent(mission, rocket!, shape, 1e-9);
    }) / flights;
  return { search_ms, trials, flight_ms };
}

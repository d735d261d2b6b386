import { indexAt } from '../../flight/events.ts';
import { peakAltitudeIndex } from '../../flight/peakAltitude.ts';
import type { Flight } from '../../flight/types.ts';
import { entryBetween } from '../../flight/wayDown/entry.ts';
import { findParachutes } from '../../flight/wayDown/parachutes.ts';
import { poweredLanding } from '../../flight/wayDown/powered.ts';
import { entryReview } from './entryReview.ts';
import { impactReview } from './impact.ts';
import { landingReview } from './landing.ts';
import { descentReview, parachuteReview } from './parachuteReview.ts';
import type { ImpactReview, WayDownReview } from './types.ts';

export { wayDownFindings } from './findings.ts';

type Parts = Pick<WayDownReview, 'impact' | 'entry' | 'parachute' | 'descent' | 'poweredLanding'>;

/**
 * The parts of a way down that was flown: fall, entry, parachutes, landing (METHODS §8).
 * @param start axis point from which the flight comes down
 */
export function flownDown(flight: Flight, start: number, touchdown_s: number | null): Parts {
  const { time, altitude } = flight;
  const n = time.length;
  const end = touchdown_s === null ? n - 1 : indexAt(time, touchdown_s);
  const canopy = findParachutes(flight, start);
  const entryFrom = firstInAir(flight, start);
  const entryTo = canopy === null ? end : Math.min(end, indexAt(time, canopy.open_s));
  const entry = canopy?.openedBefore ? null : entryBetween(flight, entryFrom, entryTo);
  const powered = touchdown_s === null ? null : poweredLanding(flight, touchdown_s);
  const from = fallStart(flight, start, entryFrom);
  const next = flight.burns.find((b) => b.startIndex > from);
  const ends: [number, ImpactReview['until']][] = [
    [end, touchdown_s === null ? 'end of the log' : 'ground'],
    ...(next === undefined ? [] : [[next.startIndex, 'burn'] as [number, ImpactReview['until']]]),
    ...(canopy === null || canopy.openedBefore
      ? []
      : [[entryTo, 'parachute-open'] as [number, ImpactReview['until']]]),
  ];
  const [to, until] = ends.reduce((a, b) => (b[0] < a[0] ? b : a));
  return {
    impact: impactReview({ flight, from, to, until, identified: entry?.drag ?? null }),
    entry: entry === null ? null : entryReview(flight, entry),
    parachute: canopy === null ? null : parachuteReview(flight, start, canopy),
    descent:
      touchdown_s === null || powered !== null || altitude[start]! - altitude[end]! < 100
        ? null
        : descentReview(flight, end, canopy !== null),
    poweredLanding: powered === null ? null : landingReview(flight, powered),
  };
}

function firstInAir(flight: Flight, start: number): number {
  const top = flight.mission.world.atmosphere?.top_m ?? Number.POSITIVE_INFINITY;
  let i = start;
  while (i < flight.time.length - 1 && flight.altitude[i]! > top) i++;
  return i;
}

/** Thinner than this the air does nothing to a rising body that a descent's drag would have to answer for, Pa. */
const THIN_PA = 10;

/** Axis point after the last burn or separation above the air, or the peak of a flight that never left it. */
function fallStart(flight: Flight, start: number, entryFrom: number): number {
  let from = -1;
  for (const burn of flight.burns) {
    if (burn.endIndex <= entryFrom && flight.dynamicPressure[burn.endIndex]! < THIN_PA)
      from = Math.max(from, burn.endIndex);
  }
  for (const drop of flight.drops) {
    if (drop.index < entryFrom && drop.index >= from && from >= 0) from = drop.index + 1;
  }
  return from >= 0 ? from : Math.min(start, peakAltitudeIndex(flight));
}

import type { Flight, HeadingReading } from '../flight/types.ts';
import type { AscentSpan } from '../ledger/ascentEnd.ts';
import { type LossCurves, lossCurves } from '../ledger/lossCurves.ts';
import { type LedgerTotals, ledgerTotals } from '../ledger/totals.ts';
import { ledgerSigmas } from '../ledger/uncertainty.ts';
import { figure, unavailable, widened, withAssumption } from './figure.ts';
import { laterInCoast } from './orbitFigures.ts';
import type { Figure, FrameName, LedgerEntries } from './types.ts';

/** One frame's ledger with intervals, and the curves it was read from. */
export interface FrameLedger {
  readonly entries: LedgerEntries;
  readonly curves: LossCurves;
  readonly totals: LedgerTotals;
}

type EntryName = keyof LedgerEntries;

const ENTRY_NAMES: readonly EntryName[] = [
  'ideal',
  'backPressure',
  'steering',
  'drag',
  'gravity',
  'frame',
  'holdDown',
  'speedGained',
  'unexplained',
];

/** What the other reading of an unseen heading is called. */
const HEADING_UNSEEN: Readonly<Record<HeadingReading, string>> = {
  'great-circle': 'heading unseen: the ground track as a great circle',
  'held-azimuth': 'heading unseen: thrust that holds the launch azimuth by compass',
  logged: 'heading unseen',
};

/** Keeps the books of one frame and says why an entry is missing. */
export function frameLedger(flight: Flight, span: AscentSpan, frame: FrameName): FrameLedger {
  const curves = lossCurves(flight, span.start, span.end, frame);
  const totals = ledgerTotals(curves);
  const sigmas = ledgerSigmas(flight, curves);
  const other =
    flight.otherTrack === null
      ? null
      : ledgerTotals(lossCurves({ ...flight, track: flight.otherTrack }, span.start, span.end, frame));
  const made = Object.fromEntries(
    ENTRY_NAMES.map((name) => {
      const value = totals[name];
      if (value === null) return [name, unavailable(whyMissing(flight, name, frame))];
      let f: Figure = figure(value, sigmas[name], basisOf(flight, name));
      if (name === 'speedGained') f = widenedByCoast(f, flight, span, frame);
      const moved = other?.[name];
      if (moved !== null && moved !== undefined && Math.abs(moved - value) > 0.05) {
        f = withAssumption(f, HEADING_UNSEEN[flight.otherTrack!.reading], moved);
      }
      return [name, f];
    }),
  ) as unknown as LedgerEntries;
  return { entries: made, curves, totals };
}

/**
 * In the coast after cutoff energy is kept, so a later speed tells what it was at cutoff. Where the log says
 * otherwise (a display that lags behind), the interval reaches that speed.
 */
function widenedByCoast(f: Figure, flight: Flight, span: AscentSpan, frame: FrameName): Figure {
  const later = laterInCoast(flight, span.end);
  if (later === null || f.value === null) return f;
  const { mu_m3_s2, spin_rad_s } = flight.mission.world;
  const speed = frame === 'ground' ? flight.speed : flight.track.inertialSpeed;
  const potential = (i: number): number => {
    const r = flight.radius[i]!;
    const turning = frame === 'ground' ? spin_rad_s * r * Math.cos(flight.track.latitude[i]!) : 0;
    return -mu_m3_s2 / r - (turning * turning) / 2;
  };
  const squared = speed[later]! ** 2 + 2 * (potential(later) - potential(span.end));
  return squared > 0 ? widened(f, f.value + Math.sqrt(squared) - speed[span.end]!) : f;
}

/** Entries that hang on the engines or on the drag area. */
const ON_VEHICLE: readonly EntryName[] = [
  'ideal',
  'backPressure',
  'steering',
  'drag',
  'holdDown',
  'unexplained',
];

function basisOf(flight: Flight, name: EntryName): 'measured' | 'derived' | 'identified' {
  if (flight.identified?.adopted === true && ON_VEHICLE.includes(name)) {
    if (name !== 'drag' || flight.identified.dragArea_m2 !== null) return 'identified';
  }
  if (name === 'speedGained' && flight.log.channels.speed !== undefined) return 'measured';
  return 'derived';
}

/** The reason, in a clause, why an entry cannot be had. */
function whyMissing(flight: Flight, name: EntryName, frame: FrameName): string {
  if (name === 'frame' && frame === 'inertial') return 'an inertial frame has no such entry';
  const { log, mission } = flight;
  if (name === 'unexplained') return 'the remainder needs every other entry';
  if (log.channels.mass === undefined) return 'the log has no mass';
  if (flight.burns.length === 0) return 'no burn was found in the log';
  if (name === 'drag')
    return mission.vehicle === null
      ? 'the card gives no vehicle and the log no drag'
      : 'the card gives no drag area for every stage that flew in air';
  if (name === 'steering' && log.channels.pitch === undefined) return 'the log has no pitch';
  if (!flight.gaps.known)
    return mission.vehicle === null
      ? 'no card tells the specific impulse and the log has no thrust'
      : 'the card gives no specific impulse for every stage that burnt';
  return 'the card gives no exit area for every stage that burnt in air';
}

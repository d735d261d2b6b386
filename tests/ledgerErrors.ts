import { buildFlight } from '../src/flight/buildFlight.ts';
import { ascentSpan } from '../src/ledger/ascentEnd.ts';
import { readLog } from '../src/log/readLog.ts';
import { readMission } from '../src/mission/readCard.ts';
import { frameLedger } from '../src/review/ledgerFigures.ts';
import { type Disturbance, doubtfulCard, noisyLog } from './noisyFlights.ts';
import { type ReferenceName, readTruth } from './referenceFlights.ts';

/** The ledger's entries and what a truth file calls them. */
export const entryOfTruth = {
  ideal: 'ideal',
  backPressure: 'pressure',
  steering: 'steering',
  drag: 'drag',
  gravity: 'gravity',
  frame: 'frame',
  speedGained: 'speed_gained',
  unexplained: null,
} as const;

export type EntryName = keyof typeof entryOfTruth;
export const entryNames = Object.keys(entryOfTruth) as EntryName[];

/** One entry of one disturbed flight against the truth, m/s. */
export interface EntryError {
  readonly error: number;
  readonly half: number;
  readonly covered: boolean;
  readonly ideal: number;
}

/** An error this small counts as covered whatever the interval, m/s. */
export const NEGLIGIBLE_M_S = 0.3;

/** Disturbs a flight and its card by a seed, keeps its books and compares them with the truth. */
export async function ledgerErrors(
  name: ReferenceName,
  disturbance: Disturbance,
  seed: number,
  frame: 'ground' | 'inertial' = 'ground',
): Promise<Partial<Record<EntryName, EntryError>>> {
  const log = await readLog(new TextEncoder().encode(noisyLog(name, disturbance, seed)), { name });
  const mission = readMission({ card: { name, text: doubtfulCard(name, seed) } });
  const flight = buildFlight(log, mission);
  const { entries } = frameLedger(flight, ascentSpan(flight), frame);
  const truth = readTruth(name)[frame];
  const out: Partial<Record<EntryName, EntryError>> = {};
  for (const entry of entryNames) {
    const figure = entries[entry];
    if (figure.value === null) continue;
    const key = entryOfTruth[entry];
    const exact = key === null ? 0 : truth[key]!;
    const error = figure.value - exact;
    out[entry] = {
      error,
      half: (figure.high! - figure.low!) / 2,
      covered: Math.abs(error) < NEGLIGIBLE_M_S || (figure.low! <= exact && exact <= figure.high!),
      ideal: truth.ideal!,
    };
  }
  return out;
}

/** Quantile of sorted numbers. */
export function quantile(sorted: readonly number[], p: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))]!;
}

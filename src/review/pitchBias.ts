import { buildFlight } from '../flight/buildFlight.ts';
import { type PitchReading, pitchAgainstPath } from '../flight/identify/pitchAgainstPath.ts';
import type { Flight } from '../flight/types.ts';
import { ascentSpan } from '../ledger/ascentEnd.ts';
import { dragAcceleration } from '../ledger/dragAcceleration.ts';
import { NORMAL_95, withAssumption } from './figure.ts';
import { type FrameLedger, frameLedger } from './ledgerFigures.ts';
import type { Figure, FrameName, LedgerEntries, ReviewVehicle } from './types.ts';
import { vehicleFigures } from './vehicleFigures.ts';

/** Biases of the pitch that are told, rad. */
const TOLD_RAD = (0.5 * Math.PI) / 180;

/** What the assumption is called beside a figure. */
const PITCH_BIAS = 'pitch bias';

/** Shares of a figure's half interval, and of itself, that a correction must exceed to be told. */
const TOLD_OF_INTERVAL = 0.1;
const TOLD_OF_VALUE = 1e-4;

/** The pitch channel held against the path; null where either does not say enough. */
export function pitchReading(flight: Flight): PitchReading | null {
  return pitchAgainstPath(flight, dragAcceleration(flight));
}

/** True where the channel is off by more than its error and than what is worth telling. */
export function isBiased({ sense, bias_rad, sigma_rad }: PitchReading): boolean {
  return sense === 'from-horizon' && Math.abs(bias_rad) >= Math.max(TOLD_RAD, 3 * sigma_rad);
}

/** A bias of the pitch channel, and the flight understood anew without it. */
export interface PitchCorrection {
  /** One-sigma share to which the bias is known. */
  readonly share: number;
  readonly flight: Flight;
}

/** The flight with its pitch corrected by a bias found in it; null where none was. */
export function pitchCorrection(flight: Flight, reading: PitchReading | null): PitchCorrection | null {
  const { log, mission } = flight;
  const { pitch } = log.channels;
  if (reading === null || !isBiased(reading) || pitch === undefined) return null;
  const turned = pitch.map((theta) => theta + reading.bias_rad);
  return {
    share: reading.sigma_rad / Math.abs(reading.bias_rad),
    flight: buildFlight({ ...log, channels: { ...log.channels, pitch: turned } }, mission),
  };
}

/** One frame's ledger, beside its entries what they would be with the pitch corrected. */
export function ledgerWithPitchBias(
  ledger: FrameLedger,
  frame: FrameName,
  correction: PitchCorrection | null,
): FrameLedger {
  if (correction === null) return ledger;
  const moved = frameLedger(correction.flight, ascentSpan(correction.flight), frame).entries;
  const entries = Object.fromEntries(
    Object.entries(ledger.entries).map(([name, f]: [string, Figure]) => [
      name,
      carried(f, moved[name as keyof LedgerEntries], correction.share),
    ]),
  ) as unknown as LedgerEntries;
  return { ...ledger, entries };
}

/** The identified vehicle, beside its figures what they would be with the pitch corrected. */
export function vehicleWithPitchBias(
  vehicle: ReviewVehicle | null,
  correction: PitchCorrection | null,
): ReviewVehicle | null {
  const moved = correction === null ? null : vehicleFigures(correction.flight);
  if (vehicle === null || correction === null || moved === null) return vehicle;
  const { share } = correction;
  return {
    ...vehicle,
    stages: vehicle.stages.map((stage) => {
      const other = moved.stages.find((s) => s.name === stage.name && s.stretch === stage.stretch);
      if (other === undefined) return stage;
      return {
        ...stage,
        isp_s: carried(stage.isp_s, other.isp_s, share),
        exitArea_m2: carried(stage.exitArea_m2, other.exitArea_m2, share),
        thrustVacuum_N: carried(stage.thrustVacuum_N, other.thrustVacuum_N, share),
      };
    }),
    dragArea:
      vehicle.dragArea?.map((node) => {
        const other = moved.dragArea?.find((n) => n.mach === node.mach);
        return other === undefined
          ? node
          : { ...node, dragArea_m2: carried(node.dragArea_m2, other.dragArea_m2, share) };
      }) ?? null,
  };
}

/**
 * A figure with the reach of the corrected one: its 95 % interval, and to first order the bias's own error, which
 * moves it in proportion.
 */
function carried(f: Figure, moved: Figure, share: number): Figure {
  if (f.value === null || moved.value === null) return f;
  const by = moved.value - f.value;
  const half = (f.high! - f.low!) / 2;
  if (Math.abs(by) <= Math.max(TOLD_OF_INTERVAL * half, TOLD_OF_VALUE * Math.abs(f.value))) return f;
  const own = NORMAL_95 * share * by;
  const low = moved.value - Math.hypot(moved.value - moved.low!, own);
  const high = moved.value + Math.hypot(moved.high! - moved.value, own);
  return withAssumption(withAssumption(f, PITCH_BIAS, low), PITCH_BIAS, high);
}

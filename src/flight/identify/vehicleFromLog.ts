import type { Log } from '../../log/types.ts';
import type { Mission, Vehicle } from '../../mission/types.ts';
import { alongPath } from '../alongPath.ts';
import type { Axis } from '../axis.ts';
import type { ThrustGaps } from '../thrustGaps.ts';
import type { Burn, GroundTrack } from '../types.ts';
import { type AdoptionReason, adoption, burnsAsIdentified, cardLacks, vehicleAsIdentified } from './adopt.ts';
import { fittedDragArea, identifyVehicle, type VehicleFit } from './identifyVehicle.ts';
import {
  type CardShares,
  dragUnknowns,
  engineUnknowns,
  HELD_SHARES,
  statedShares,
  USUAL_SHARES,
} from './unknowns.ts';

/** What the identification is made from; arrays on the flight's axis unless said otherwise. */
export interface IdentificationInput {
  readonly log: Log;
  readonly mission: Mission;
  readonly axis: Axis;
  readonly mass: Float64Array;
  readonly pitch: Float64Array;
  readonly radius: Float64Array;
  readonly speed: Float64Array;
  readonly verticalSpeed: Float64Array;
  readonly flightPathAngle: Float64Array;
  readonly pressure: Float64Array;
  readonly dynamicPressure: Float64Array;
  readonly mach: Float64Array;
  readonly stage: Int16Array;
  readonly loggedDrag: Float64Array | null;
  readonly loggedThrust: Float64Array | null;
  readonly speedSigma_m_s: number;
  readonly pitchSigma_rad: number;
  readonly massSigma_kg: number;
  readonly riseAngleSigma: Float64Array;
  readonly liftOffIndex: number;
  readonly startsInFlight: boolean;
  /** Burns with the card's values, as far as it has them. */
  readonly burns: readonly Burn[];
  /** Books the engines and finds the track for burns with given values. */
  readonly book: (burns: readonly Burn[]) => { gaps: ThrustGaps; track: GroundTrack };
}

/** The vehicle as the log shows it, and what stands in the books. */
export interface IdentifiedVehicle {
  readonly fit: VehicleFit;
  readonly reason: AdoptionReason;
  /** True where the books use the identified values. */
  readonly adopted: boolean;
  /** Burns as identified, whether adopted or not. */
  readonly burns: readonly Burn[];
  readonly vehicle: Vehicle | null;
  /** Drag area on the axis, m²; null on a world without air. */
  readonly dragArea_m2: Float64Array | null;
}

/** The direction of flight follows from the thrust and the thrust from the direction: they settle in three turns. */
const TURNS = 3;

/** A fit with the card's values held must leave this many times the residual of a free one to be overruled. */
const OVERRULED = 2;

/** Identifies the vehicle; null where the log has too little for it. */
export function vehicleFromLog(input: IdentificationInput): IdentifiedVehicle | null {
  const stated = statedShares(input.mission);
  if (stated !== null) return identifyWith(input, stated);
  const free = identifyWith(input, USUAL_SHARES);
  if (free === null || !cardLacks(free.fit) || cardGivesNothing(free)) return free;
  // Some of it is on the card: that part stands unless the log cannot be explained with it.
  const held = identifyWith(input, HELD_SHARES);
  if (held === null) return free;
  return held.fit.rms_m_s > OVERRULED * Math.max(free.fit.rms_m_s, input.speedSigma_m_s, 0.05) ? free : held;
}

function cardGivesNothing({ fit }: IdentifiedVehicle): boolean {
  return fit.engines.every((e) => !e.ispOnCard && !e.areaOnCard) && fit.drag?.onCard !== true;
}

function identifyWith(input: IdentificationInput, shares: CardShares): IdentifiedVehicle | null {
  const { log, mission, axis, burns } = input;
  const channel = log.channels.speed;
  const up = log.channels.verticalSpeed;
  const across = log.channels.horizontalSpeed;
  const rawSpeed =
    channel ??
    (up !== undefined && across !== undefined ? up.map((v, i) => Math.hypot(v, across[i]!)) : undefined);
  if (rawSpeed === undefined || burns.length === 0) return null;
  let ground = 0;
  for (let i = 0; i < input.pressure.length; i++) ground = Math.max(ground, input.pressure[i]!);
  const { engines, of } = engineUnknowns(mission, burns, ground, shares);
  const drag =
    input.loggedDrag !== null
      ? null
      : dragUnknowns(mission, input.stage, input.mach, burns[0]!.startMass_kg ?? 0, shares);
  let made: IdentifiedVehicle | null = null;
  let used: readonly Burn[] = burns;
  for (let turn = 0; turn < TURNS; turn++) {
    const { track, gaps } = input.book(used);
    const along = alongPath(mission.world, { ...input, ...track });
    const fit = identifyVehicle(
      {
        ...input,
        time: axis.time,
        row: axis.row,
        rawSpeed,
        along,
        engineOf: of,
        engines,
        drag,
      },
      input.speedSigma_m_s,
      !input.startsInFlight && axis.liftOff >= 0,
      input.loggedThrust === null ? null : { thrust_N: input.loggedThrust, massSigma_kg: input.massSigma_kg },
    );
    if (fit === null) return null;
    const identified = burnsAsIdentified(burns, fit, input.loggedThrust !== null);
    let ideal = 0;
    for (const v of gaps.vacuum) ideal += v;
    const reason = adoption(fit, mission, ideal, input.speedSigma_m_s);
    const adopted = reason !== 'card-holds' && reason !== 'poor-fit';
    made = {
      fit,
      reason,
      adopted,
      burns: identified,
      vehicle: vehicleAsIdentified(mission.vehicle, fit),
      dragArea_m2: fittedDragArea(fit, input.mach),
    };
    // While the card stands its own thrust gives the direction, and nothing changes at another turn.
    if (!adopted) break;
    used = identified;
  }
  return made;
}

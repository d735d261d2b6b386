import { stageName } from '../flight/events.ts';
import { columnOf } from '../flight/identify/equation.ts';
import { factorSigma } from '../flight/identify/identifyVehicle.ts';
import type { PitchReading } from '../flight/identify/pitchAgainstPath.ts';
import { speedFrameByFall } from '../flight/identify/speedFrameByFall.ts';
import type { Flight } from '../flight/types.ts';
import { ascentSpan } from '../ledger/ascentEnd.ts';
import type { QualityNote } from '../log/types.ts';
import { obtainableDeltaV_m_s } from '../mission/obtainable.ts';
import { liftOffMass_kg } from '../mission/vehicle.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { isBiased, pitchReading } from './pitchBias.ts';
import { vehicleFigures } from './vehicleFigures.ts';
import { decimal, formatHeight } from './wording.ts';

/** Shares under which card and log count as telling the same. */
const SAME_MASS = 0.002;
const SAME_DRY_MASS = 0.02;
const SAME_BURN = 0.02;
const SAME_ISP = 0.005;
const SAME_THRUST = 0.01;

/**
 * Where the card and the log, or two channels of the log, tell different stories. Nothing is changed by it.
 * @param frame what was found of the speed's frame
 * @param reading the pitch held against the path
 */
export function consistencyNotes(
  flight: Flight,
  frame: readonly QualityNote[] = frameOfSpeed(flight),
  reading: PitchReading | null = pitchReading(flight),
): QualityNote[] {
  return [
    ...beginsInFlight(flight),
    ...speedOverCard(flight),
    ...liftOffMass(flight),
    ...dryMasses(flight),
    ...burnTimes(flight),
    ...engines(flight),
    ...thrusts(flight),
    ...frame,
    // In the wrong frame the path turns otherwise than the thrust has it, whatever the pitch.
    ...(frame.length > 0 || reading === null ? [] : pitch(reading)),
  ];
}

function note(code: string, channel: QualityNote['channel'], text: string): QualityNote {
  return { code, channel, rows: null, count: 1, text };
}

function beginsInFlight({ startsInFlight, altitude, speed }: Flight): QualityNote[] {
  if (!startsInFlight) return [];
  const state = `at ${formatHeight(altitude[0]!)} and ${decimal(speed[0]!, 0)} m/s`;
  return [
    note(
      'begins-in-flight',
      'time',
      `The log begins in flight, ${state}: times count from its first row, and what was spent before it is not in the books.`,
    ),
  ];
}

/** Share by which the speed gained on the way up may exceed all that the card's vehicle has. */
const OVER_CARD = 0.02;

/** No rocket gains more speed over the ground, on the way up, than its whole delta-v in vacuum. */
function speedOverCard(flight: Flight): QualityNote[] {
  const { vehicle } = flight.mission;
  const mass_kg = vehicle === null ? null : liftOffMass_kg(vehicle);
  if (vehicle === null || mass_kg === null || flight.startsInFlight) return [];
  const aboard = { stage: 0, mass_kg, time_s: 0, gone: new Set<string>(), dropTimes_s: new Map() };
  const total = obtainableDeltaV_m_s(vehicle, aboard);
  const gained = flight.speed[ascentSpan(flight).end]! - flight.speed[0]!;
  if (total === null || !(gained > (1 + OVER_CARD) * total)) return [];
  const unitOf = (channel: string) => flight.log.readings.find((r) => r.channel === channel)?.unit ?? 'SI';
  return [
    note(
      'speed-over-card',
      'speed',
      `The speed grows by ${decimal(gained, 0)} m/s on the way up, but the card’s vehicle has ${decimal(total, 0)} m/s in all: a unit is wrong (speed read in ${unitOf('speed')}, altitude in ${unitOf('altitude')}) or the card is another vehicle’s, and no figure holds. Name the unit (--map speed=COLUMN:UNIT) or give the right card.`,
    ),
  ];
}

/** “3.2 % more”, “0.4 % less”. */
function compared(found: number, card: number): string {
  const share = 100 * (found / card - 1);
  return `${decimal(Math.abs(share), 1)} % ${share > 0 ? 'more' : 'less'}`;
}

function liftOffMass(flight: Flight): QualityNote[] {
  const { vehicle } = flight.mission;
  const card = vehicle === null ? null : liftOffMass_kg(vehicle);
  if (card === null || flight.mass === null || flight.startsInFlight) return [];
  const found = flight.mass[flight.burns[0]?.startIndex ?? flight.liftOffIndex]!;
  if (Math.abs(found - card) <= Math.max(SAME_MASS * card, 3 * flight.noise.mass_kg)) return [];
  return [
    note(
      'card-liftoff-mass',
      'mass',
      `The log begins with ${decimal(found, 0)} kg, ${compared(found, card)} than the card’s ${decimal(card, 0)} kg; the log’s mass is used.`,
    ),
  ];
}

function dryMasses(flight: Flight): QualityNote[] {
  const stages = flight.mission.vehicle?.stages ?? [];
  return flight.drops.flatMap((drop) => {
    if (drop.kind !== 'separation') return [];
    const k = stages.findIndex((s) => s.name === drop.subject);
    const dry = stages[k]?.dryMass_kg ?? null;
    if (dry === null) return [];
    const extra = drop.mass_kg - dry;
    if (Math.abs(extra) <= Math.max(SAME_DRY_MASS * dry, 4 * flight.noise.mass_kg)) return [];
    const reading =
      extra > 0
        ? 'it went with propellant left, or is heavier'
        : 'it is lighter, or the log missed a part of the drop';
    return [
      note(
        'card-dry-mass',
        'mass',
        `At ${decimal(drop.time_s, 1)} s ${decimal(drop.mass_kg, 0)} kg fell away, ${compared(drop.mass_kg, dry)} than the dry mass of “${stages[k]!.name}” on the card (${decimal(dry, 0)} kg): ${reading}.`,
      ),
    ];
  });
}

/** Burns that ran a stage dry against its propellant over its flow at full throttle. */
function burnTimes(flight: Flight): QualityNote[] {
  const stages = flight.mission.vehicle?.stages ?? [];
  return stages.flatMap((stage, k) => {
    const { thrustVacuum_N: thrust, ispVacuum_s: isp, propellantMass_kg: load } = stage;
    const own = flight.burns.filter((b) => b.stage === k);
    if (thrust === null || isp === null || load === null || own.length === 0) return [];
    if (stage.boosters.length > 0 || stage.thrustCurve !== null || flight.throttle === null) return [];
    if (own.some((b) => b.startsBeforeLog || b.endsAfterLog)) return [];
    let open_s = 0;
    let burnt = 0;
    for (const burn of own) {
      for (let i = burn.startIndex; i < burn.endIndex; i++) {
        open_s +=
          ((flight.throttle[i]! + flight.throttle[i + 1]!) / 2) * (flight.time[i + 1]! - flight.time[i]!);
      }
      burnt += (burn.startMass_kg ?? 0) - (burn.endMass_kg ?? 0);
    }
    if (burnt < 0.98 * load) return [];
    const card_s = (load * STANDARD_GRAVITY_M_S2 * isp) / thrust;
    if (Math.abs(open_s - card_s) <= SAME_BURN * card_s) return [];
    return [
      note(
        'card-burn-time',
        'throttle',
        `“${stage.name}” ran ${decimal(open_s, 1)} s of full throttle until dry, ${compared(open_s, card_s)} than the ${decimal(card_s, 1)} s that its propellant, thrust and specific impulse on the card make.`,
      ),
    ];
  });
}

/** Identified specific impulse against the card's, where they differ beyond the fit's own error. */
function engines(flight: Flight): QualityNote[] {
  const { identified } = flight;
  if (identified === null || identified.reason === 'poor-fit') return [];
  const { fit } = identified;
  return fit.engines.flatMap((engine, e) => {
    const c = columnOf.isp(e);
    const sigma = factorSigma(fit, c);
    const off = fit.factors[c]! - 1;
    if (!engine.ispOnCard || Math.abs(off) < Math.max(SAME_ISP, 3 * sigma)) return [];
    const found = engine.ispReference_s * fit.factors[c]!;
    return [
      note(
        'card-isp',
        'speed',
        `The log shows ${decimal(found, 1)} s of vacuum specific impulse for “${stageName(flight, engine.stage)}”, ${compared(found, engine.ispReference_s)} than the card’s ${decimal(engine.ispReference_s, 1)} s (by the equation of motion; ${identified.adopted ? 'the log’s value stands in the ledger' : 'the card’s value stands in the ledger'}).`,
      ),
    ];
  });
}

/** Vacuum thrust at full throttle, flow × identified specific impulse, against the card's rating. */
function thrusts(flight: Flight): QualityNote[] {
  const stages = flight.mission.vehicle?.stages ?? [];
  return (vehicleFigures(flight)?.stages ?? []).flatMap((found, e) => {
    const stage = stages[flight.identified?.fit.engines[e]?.stage ?? -1];
    const rated = found.card.thrustVacuum_N;
    const { value, low, high } = found.thrustVacuum_N;
    if (stage === undefined || stage.boosters.length > 0 || stage.thrustCurve !== null) return [];
    if (rated === null || value === null || low === null || high === null || flight.throttle === null)
      return [];
    if ((low <= rated && rated <= high) || Math.abs(value / rated - 1) < SAME_THRUST) return [];
    return [
      note(
        'card-thrust',
        'mass',
        `At full throttle “${found.name}” gave ${decimal(value / 1000, 0)} kN in vacuum (${decimal(low / 1000, 0)} kN to ${decimal(high / 1000, 0)} kN, by the log’s flow of propellant and its specific impulse), ${compared(value, rated)} than the card’s ${decimal(rated / 1000, 0)} kN.`,
      ),
    ];
  });
}

function pitch(found: PitchReading): QualityNote[] {
  const degrees = (found.bias_rad * 180) / Math.PI;
  if (found.sense === 'from-vertical')
    return [
      note(
        'pitch-from-vertical',
        'pitch',
        'The path turns as if the pitch channel were counted from the vertical; it was read as counted from the horizon. Steering and the identified engines follow from it: choose the other reading.',
      ),
    ];
  if (!isBiased(found)) return [];
  const half = (1.96 * found.sigma_rad * 180) / Math.PI;
  const digits = half < 0.1 ? 2 : 1;
  return [
    note(
      'pitch-bias',
      'pitch',
      `The path’s turning asks for a thrust axis ${decimal(Math.abs(degrees), digits)}° ${degrees > 0 ? 'above' : 'below'} the logged pitch (± ${decimal(half, digits)}°): a bias of the channel, or lift. The log’s pitch is used as it stands; steering and the identified engines follow from it, and what correcting it would move stands beside them.`,
    ),
  ];
}

/** A speed channel in another frame than it was read in, by the free fall of a coast. */
export function frameOfSpeed(flight: Flight): QualityNote[] {
  const found = speedFrameByFall(flight);
  if (found === null) return [];
  const named = { ground: 'over the ground', inertial: 'inertial' };
  const channel = found.readAs === 'ground' ? 'speed' : 'inertialSpeed';
  return [
    note(
      'speed-frame',
      channel,
      `The free fall from ${decimal(found.start_s, 0)} to ${decimal(found.end_s, 0)} s asks for ${decimal(found.fallen_m_s, 0)} m/s of horizontal inertial speed (± ${decimal(1.96 * found.sigma_m_s, 0)} m/s). The speed column gives ${decimal(found.asRead_m_s, 0)} m/s read as ${named[found.readAs]}, as it was, and ${decimal(found.otherwise_m_s, 0)} m/s read as ${named[found.fits]}: it is ${named[found.fits]}. Orbit, ledger and delta-v to go follow from it: choose the other reading.`,
    ),
  ];
}

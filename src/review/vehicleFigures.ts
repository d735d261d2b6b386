import { stageName } from '../flight/events.ts';
import { columnOf } from '../flight/identify/equation.ts';
import { factorSigma } from '../flight/identify/identifyVehicle.ts';
import type { IdentifiedVehicle } from '../flight/identify/vehicleFromLog.ts';
import type { Flight } from '../flight/types.ts';
import { ascentSpan } from '../ledger/ascentEnd.ts';
import { fitVariances } from '../ledger/fitSensitivity.ts';
import { lossCurves } from '../ledger/lossCurves.ts';
import { dragArea_m2 } from '../mission/vehicle.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { figure, unavailable } from './figure.ts';
import type { Figure, ReviewVehicle, VehicleStage } from './types.ts';
import { decimal } from './wording.ts';

/** Share of the prior's spread that a fit must get under to say anything of its own. */
const TELLS = 0.9;

/** The vehicle as the log shows it, with the card's values beside; null where the log has too little for it. */
export function vehicleFigures(flight: Flight): ReviewVehicle | null {
  const { identified } = flight;
  if (identified === null || identified.reason === 'poor-fit') return null;
  return {
    inBooks: identified.adopted ? 'identified' : 'card',
    text: inWords(identified),
    stages: identified.fit.engines.map((_, e) => stageFigures(flight, identified, e)),
    dragArea: dragFigures(flight, identified),
    unseparated: unseparated(flight, identified),
    residual_m_s: identified.fit.rms_m_s,
  };
}

function inWords({ reason }: IdentifiedVehicle): string {
  switch (reason) {
    case 'card-silent':
      return 'The card does not give every value: what it lacks is identified from the log and stands in the ledger.';
    case 'card-unsure':
      return 'The card says how unsure its values are: they are identified from the log with the card’s as a start.';
    case 'card-contradicted':
      return 'The card’s values leave speed unexplained that the log’s own account for: the identified values stand in the ledger.';
    default:
      return 'The log bears the card’s values out; they stand in the ledger.';
  }
}

function sigmaOf(identified: IdentifiedVehicle, column: number): number {
  return factorSigma(identified.fit, column);
}

/** True where the log narrows the unknown; false where only the prior speaks. */
function tells(identified: IdentifiedVehicle, column: number): boolean {
  return sigmaOf(identified, column) < TELLS * identified.fit.priorSigma[column]!;
}

/** Share under which a value is held to the card's, so that nothing is asked of the log. */
const HELD = 0.001;

/** True where the log was asked and does not say. */
function isOpen(identified: IdentifiedVehicle, column: number): boolean {
  return identified.fit.priorSigma[column]! > HELD && !tells(identified, column);
}

function factorFigure(identified: IdentifiedVehicle, column: number, reference: number): Figure {
  return figure(
    identified.fit.factors[column]! * reference,
    sigmaOf(identified, column) * reference,
    tells(identified, column) ? 'identified' : 'assumed',
  );
}

function stageFigures(flight: Flight, identified: IdentifiedVehicle, e: number): VehicleStage {
  const { fit } = identified;
  const engine = fit.engines[e]!;
  const card = flight.mission.vehicle?.stages[engine.stage] ?? null;
  const isp = factorFigure(identified, columnOf.isp(e), engine.ispReference_s);
  const area = columnOf.area(e, fit.engines.length);
  const flow = fullFlow_kg_s(flight, fit.engineOf, e);
  const perIsp = flow === null ? null : flow * STANDARD_GRAVITY_M_S2;
  return {
    name: stageName(flight, engine.stage),
    stretch: engine.stretch,
    isp_s: isp,
    exitArea_m2:
      engine.areaReference_m2 <= 1e-9
        ? unavailable('no air pressed on the engine, or the card says that none does')
        : factorFigure(identified, area, engine.areaReference_m2),
    thrustVacuum_N:
      perIsp === null
        ? unavailable('the flow at full throttle is not known')
        : {
            value: isp.value! * perIsp,
            low: isp.low! * perIsp,
            high: isp.high! * perIsp,
            basis: isp.basis,
          },
    card: {
      isp_s: card?.ispVacuum_s ?? null,
      exitArea_m2: card?.exitArea_m2 ?? null,
      thrustVacuum_N: card?.thrustVacuum_N ?? null,
    },
  };
}

/** Propellant flow at full throttle while engine `e` burns, kg/s; throttle 1 where it is not logged. */
function fullFlow_kg_s(flight: Flight, engineOf: readonly (readonly number[])[], e: number): number | null {
  const { mass, throttle, time, gaps, burns } = flight;
  if (mass === null) return null;
  let burnt = 0;
  let open_s = 0;
  for (let i = 0; i + 1 < time.length; i++) {
    const b = gaps.burn[i]!;
    if (b === -1) continue;
    const dt = time[i + 1]! - time[i]!;
    const mid = (time[i]! + time[i + 1]!) / 2;
    const s = Math.max(
      0,
      burns[b]!.segments.findIndex((segment) => mid < segment.end_s),
    );
    if (dt < 5e-6 || engineOf[b]?.[s] !== e) continue;
    burnt += mass[i]! - mass[i + 1]!;
    open_s += (throttle === null ? 1 : (throttle[i]! + throttle[i + 1]!) / 2) * dt;
  }
  return open_s > 0.5 ? burnt / open_s : null;
}

function dragFigures(flight: Flight, identified: IdentifiedVehicle): ReviewVehicle['dragArea'] {
  const { drag, engines } = identified.fit;
  if (drag === null) return null;
  const first = flight.mission.vehicle?.stages[flight.burns[0]?.stage ?? 0];
  return drag.mach.map((mach, k) => {
    const column = columnOf.node(k, engines.length);
    // The reference area at this Mach number, as the flight met it on the way up.
    const i = nearest(flight.mach, mach);
    const reference = drag.reference_m2[i]!;
    return {
      mach,
      dragArea_m2: factorFigure(identified, column, reference),
      card_m2: first === undefined ? null : dragArea_m2(first, mach),
    };
  });
}

function nearest(mach: Float64Array, wanted: number): number {
  let best = 0;
  for (let i = 1; i < mach.length; i++)
    if (Math.abs(mach[i]! - wanted) < Math.abs(mach[best]! - wanted)) best = i;
  return best;
}

/** What the data cannot separate, one sentence each. */
function unseparated(flight: Flight, identified: IdentifiedVehicle): string[] {
  const { fit } = identified;
  const out: string[] = [];
  fit.engines.forEach((engine, e) => {
    const name = stageName(flight, engine.stage);
    const area = columnOf.area(e, fit.engines.length);
    if (engine.areaReference_m2 > 1e-9 && isOpen(identified, area))
      out.push(
        `The stage “${name}” burnt where no air pressed on it: the log fixes its specific impulse but no exit area.`,
      );
    if (isOpen(identified, columnOf.isp(e)))
      out.push(`The log does not fix the specific impulse of the stage “${name}”.`);
  });
  if (fit.drag !== null) {
    const silent = fit.drag.mach.filter((_, k) => isOpen(identified, columnOf.node(k, fit.engines.length)));
    if (silent.length > 0)
      out.push(
        `The drag area at Mach ${silent.map((m) => String(m)).join(', ')} follows from its neighbours and the curve it started from: too little drag was met there.`,
      );
  }
  const together = fixedTogether(flight);
  if (together !== null) out.push(together);
  return out;
}

/** The entries' own errors must exceed that of their sum so many times, and this many m/s (95 %), to be told. */
const TOGETHER = 2;
const TOLD_M_S = 0.3;

/** The combination of ledger entries that the log fixes much better than any of them; null where there is none. */
function fixedTogether(flight: Flight): string | null {
  const span = ascentSpan(flight);
  const curves = lossCurves(flight, span.start, span.end, 'ground');
  if (curves.ideal === null || curves.backPressure === null || curves.drag === null) return null;
  const variances = fitVariances(flight, curves);
  const half = (variance: number): number => 1.959964 * Math.sqrt(variance);
  const [ideal, back, drag, joint] = [
    half(variances.ideal),
    half(variances.backPressure),
    half(variances.drag),
    half(variances.unexplained),
  ];
  if (Math.max(ideal, back, drag) < Math.max(TOLD_M_S, TOGETHER * joint)) return null;
  const value = curves.ideal[curves.end]! - curves.backPressure[curves.end]! - curves.drag[curves.end]!;
  const sure = (x: number): string => `± ${decimal(x, x < 0.95 ? 2 : 1)} m/s`;
  return `Specific impulse, exit area and drag area trade against each other: ideal less back pressure and drag, ${decimal(value, 1)} m/s, is known to ${sure(joint)}, but ideal alone to ${sure(ideal)}, back pressure to ${sure(back)} and drag to ${sure(drag)}.`;
}

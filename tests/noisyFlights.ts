import { normalNumbers } from './noise.ts';
import { cutLog, type ReferenceName, readCardText } from './referenceFlights.ts';

/** One-sigma errors and rounding put on a reference flight, and how sure its card is. */
export interface Disturbance {
  readonly altitude_m: number;
  readonly speed_m_s: number;
  readonly pitch_deg: number;
  /** Rounding steps; 0 = none. */
  readonly altitudeStep_m: number;
  readonly massStep_kg: number;
  /** Keep every n-th row of the 10 Hz log. */
  readonly every: number;
}

/** A hand pilot's instruments at 5 Hz: noise on altitude, speed and pitch, mass in tens of kilograms. */
export const instruments: Disturbance = {
  altitude_m: 5,
  speed_m_s: 1,
  pitch_deg: 0.4,
  altitudeStep_m: 0,
  massStep_kg: 10,
  every: 2,
};

/** The same with the altitude read from a display of a tenth of a kilometre. */
export const tenths: Disturbance = { ...instruments, altitude_m: 0, altitudeStep_m: 100 };

/** The six channels of a flight with seeded errors, as a log's text. */
export function noisyLog(name: ReferenceName, disturbance: Disturbance, seed: number): string {
  const next = normalNumbers(seed * 7919 + 17);
  const lines = cutLog(name, undefined, disturbance.every).split('\n');
  const rounded = (x: number, step: number, digits: number): string =>
    step > 0 ? String(Math.round(x / step) * step) : x.toFixed(digits);
  return lines
    .map((line, i) => {
      if (i === 0) return line;
      const [time, altitude, speed, mass, throttle, pitch] = line.split(',').map(Number);
      return [
        time!.toFixed(3),
        rounded(altitude! + disturbance.altitude_m * next(), disturbance.altitudeStep_m, 2),
        Math.abs(speed! + disturbance.speed_m_s * next()).toFixed(3),
        rounded(mass!, disturbance.massStep_kg, 3),
        throttle!.toFixed(4),
        (pitch! + disturbance.pitch_deg * next()).toFixed(4),
      ].join(',');
    })
    .join('\n');
}

/** One-sigma relative errors of a card whose maker is not sure of the vehicle. */
const cardErrors = { isp: 0.005, exitArea: 0.2, dragArea: 0.1 } as const;

/** The flight's card with its vehicle's values redrawn by `cardErrors`, and saying so. */
export function doubtfulCard(name: ReferenceName, seed: number): string {
  const next = normalNumbers(seed * 104729 + 3);
  const card = JSON.parse(readCardText(name));
  const drag = 1 + cardErrors.dragArea * next();
  for (const stage of card.vehicle.stages) {
    stage.ispVacuum_s *= 1 + cardErrors.isp * next();
    stage.exitArea_m2 *= Math.max(0, 1 + cardErrors.exitArea * next());
    stage.referenceArea_m2 *= drag;
  }
  card.vehicle.standardErrors_percent = {
    isp: 100 * cardErrors.isp,
    exitArea: 100 * cardErrors.exitArea,
    dragArea: 100 * cardErrors.dragArea,
  };
  return JSON.stringify(card);
}

import type { Quantity } from '../units/quantity.ts';
import { findUnit, type Unit } from '../units/units.ts';
import { quantityOf } from './quantities.ts';
import { largestMagnitude, quantile } from './statistics.ts';
import type { ChannelName, ChannelReading } from './types.ts';

/** A unit that no header names, with the reason for taking it. */
export interface ImpliedUnit {
  readonly unit: Unit;
  readonly unitFrom: Extract<ChannelReading['unitFrom'], 'inferred' | 'assumed'>;
  readonly confidence: number;
  readonly reason: string;
}

/** What is known of the flight when a unit is sought. */
export interface Surroundings {
  /** Units that the file uses for a quantity elsewhere. */
  readonly used: ReadonlyMap<Quantity, Unit>;
  /** Values in SI units of channels already read. */
  readonly known: Readonly<Partial<Record<ChannelName, Float64Array>>>;
}

/** The unit of a column that names none, from its values and from the other columns. */
export function impliedUnit(channel: ChannelName, written: Float64Array, around: Surroundings): ImpliedUnit {
  const quantity = quantityOf[channel];
  const most = largestMagnitude(written);
  const first = written.find((x) => Number.isFinite(x)) ?? Number.NaN;
  const take = (spelling: string, confidence: number, reason: string): ImpliedUnit => {
    const unit = findUnit(quantity, spelling);
    if (unit === null) throw new RangeError(`${spelling} is no unit of ${quantity}`);
    return { unit, unitFrom: 'inferred', confidence, reason };
  };
  if (quantity === 'ratio') {
    if (channel === 'mach') return take('1', 1, 'Mach numbers have no unit');
    if (most > 1.5 && most <= 130) return take('%', 0.95, `values up to ${figure(most)} are percent`);
    return take('1', 0.95, `values up to ${figure(most)} are fractions`);
  }
  if (quantity === 'count' || quantity === 'text')
    return {
      unit: { spelling: '', factor: 1, offset: 0 },
      unitFrom: 'assumed',
      confidence: 1,
      reason: 'it has no unit',
    };
  if (quantity === 'angle') return angleUnit(channel, most, first, take);
  if (quantity === 'acceleration') {
    return most > 25 || Math.abs(first - 9.8) < 0.6
      ? take('m/s²', 0.9, `values up to ${figure(most)} are too large for multiples of g`)
      : take('g', 0.7, `values up to ${figure(most)} are multiples of g`);
  }
  if (quantity === 'temperature') {
    return quantile(written, 0.05) < 100
      ? take('°C', 0.8, 'the values are too low for kelvin')
      : take('K', 0.9, 'the values are those of air in kelvin');
  }
  if (quantity === 'pressure') return pressureUnit(channel, most, take);
  if (channel === 'thrust') return thrustUnit(most, around, take);
  const elsewhere = around.used.get(quantity);
  const apsis = elsewhere === undefined ? null : apsisUnit(channel, most, elsewhere, around);
  if (apsis !== null) return take(apsis, 0.8, `in ${apsis} it fits the altitude`);
  if (elsewhere !== undefined) {
    const rate = channel === 'verticalSpeed' ? rateAgreement(written, elsewhere, around) : null;
    return {
      unit: rate ?? elsewhere,
      unitFrom: 'inferred',
      confidence: rate === null ? 0.75 : 0.9,
      reason:
        rate === null
          ? `the file writes ${quantity} in ${elsewhere.spelling} elsewhere`
          : `in ${rate.spelling} it is the rate of the altitude`,
    };
  }
  const standard =
    quantity === 'force'
      ? 'N'
      : quantity === 'mass'
        ? massUnit(most)
        : quantity === 'speed'
          ? 'm/s'
          : quantity === 'time'
            ? 's'
            : 'm';
  return { ...take(standard, 0.6, `no unit is written; ${standard} is taken`), unitFrom: 'assumed' };
}

type Take = (spelling: string, confidence: number, reason: string) => ImpliedUnit;

/** Launch vehicles weigh 1 t to 5000 t, sounding rockets less; a number under 10 for a rocket's mass could be either. */
function massUnit(most: number): string {
  return most > 0 && most < 0.5 ? 't' : 'kg';
}

function angleUnit(channel: ChannelName, most: number, first: number, take: Take): ImpliedUnit {
  if ((channel === 'latitude' || channel === 'longitude') && most > 1e5) {
    return take('degE7', 0.95, `whole numbers up to ${figure(most)} are degrees times ten million`);
  }
  const quarter = Math.PI / 2;
  const inRadians =
    most <= 2 * Math.PI + 0.01 &&
    ((channel === 'pitch' && Math.abs(first - quarter) < 0.05) ||
      (channel === 'flightPathAngle' && most <= quarter + 0.01 && most > 1.2) ||
      (channel === 'heading' && most > 0.5 && Math.abs(first - quarter) < 0.02));
  if (inRadians)
    return take('rad', 0.9, `values up to ${figure(most)} beginning at ${figure(first)} are radians`);
  return take(
    '°',
    most > 2 * Math.PI ? 0.95 : 0.6,
    most > 2 * Math.PI ? `values up to ${figure(most)} are degrees` : 'degrees are taken',
  );
}

function pressureUnit(channel: ChannelName, most: number, take: Take): ImpliedUnit {
  if (channel === 'ambientPressure') {
    if (most > 5000) return take('Pa', 0.9, `values up to ${figure(most)} are pascals`);
    if (most > 200) return take('hPa', 0.8, `values up to ${figure(most)} are hectopascals`);
    return most > 2
      ? take('kPa', 0.7, `values up to ${figure(most)} are kilopascals`)
      : take('atm', 0.5, `values up to ${figure(most)} are atmospheres`);
  }
  return most > 0 && most < 250
    ? take('kPa', 0.7, `values up to ${figure(most)} are kilopascals`)
    : take('Pa', 0.8, `values up to ${figure(most)} are pascals`);
}

/** Thrust that moves the vehicle: over its weight at some time, and not a hundred times it. */
function thrustUnit(most: number, around: Surroundings, take: Take): ImpliedUnit {
  const mass = around.known.mass === undefined ? 0 : largestMagnitude(around.known.mass);
  if (mass > 0 && most > 0) {
    for (const [spelling, newtons] of [
      ['N', 1],
      ['kN', 1000],
      ['MN', 1e6],
    ] as const) {
      const acceleration = (most * newtons) / mass;
      if (acceleration > 1 && acceleration < 500)
        return take(
          spelling,
          0.9,
          `in ${spelling} it accelerates the logged mass by ${figure(acceleration)} m/s²`,
        );
    }
  }
  return { ...take('N', 0.6, 'no unit is written; N is taken'), unitFrom: 'assumed' };
}

/** The unit of an apsis that is not the altitude's: an apoapsis below where the vehicle was would be none. */
function apsisUnit(
  channel: ChannelName,
  most: number,
  elsewhere: Unit,
  around: Surroundings,
): 'm' | 'km' | null {
  if (channel !== 'apoapsisAltitude' || around.known.altitude === undefined) return null;
  const highest = largestMagnitude(around.known.altitude);
  if (most * elsewhere.factor < 0.5 * highest && most * 1000 > 0.9 * highest) return 'km';
  return most * elsewhere.factor > 1e9 && most > 0.9 * highest ? 'm' : null;
}

/** The speed unit in which a vertical speed best is the rate of the altitude; null where nothing fits. */
function rateAgreement(written: Float64Array, elsewhere: Unit, around: Surroundings): Unit | null {
  const { altitude, time } = around.known;
  if (altitude === undefined || time === undefined) return null;
  const width = Math.max(2, Math.floor(time.length / 50));
  let up = 0;
  let sum = 0;
  for (let i = 0; i + width < time.length; i += width) {
    const dt = time[i + width]! - time[i]!;
    const dh = altitude[i + width]! - altitude[i]!;
    const middle = written[i + (width >> 1)]!;
    if (!(dt > 0) || !Number.isFinite(dh + middle)) continue;
    up += (Math.abs(dh) / dt) * Math.abs(middle);
    sum += middle * middle;
  }
  if (!(sum > 0) || !(up > 0)) return null;
  const factor = up / sum;
  const fitting = ['m/s', 'km/h', 'ft/s', 'km/s', 'mph', 'ft/min', 'kn']
    .map((spelling) => findUnit('speed', spelling))
    .filter((unit): unit is Unit => unit !== null && Math.abs(Math.log(factor / unit.factor)) < 0.12);
  return fitting.find((unit) => unit.spelling === elsewhere.spelling) ?? fitting[0] ?? null;
}

function figure(x: number): string {
  return Number(x.toPrecision(4)).toString();
}

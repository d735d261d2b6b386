import type { Flight } from '../flight/types.ts';
import type { AscentSpan } from '../ledger/ascentEnd.ts';
import type { DeviationCurve, StripName, Strips } from './types.ts';

/** One side of the comparison. */
interface Side {
  readonly flight: Flight;
  readonly span: AscentSpan;
  readonly strips: Strips;
}

const POINTS = 120;

/**
 * Deviations from the plan, each against the axis on which it says most (METHODS §6): pitch and dynamic pressure
 * at equal altitude on the way up, throttle and thrust-to-weight at equal time.
 */
export function planDeviations(flown: Side, planned: Side): DeviationCurve[] {
  const out: DeviationCurve[] = [];
  const add = (quantity: DeviationCurve['quantity'], axis: DeviationCurve['axis']): void => {
    const strip: StripName = quantity;
    if (flown.strips.channels[strip] === undefined && planned.strips.channels[strip] === undefined) return;
    const at = axis === 'altitude_m' ? altitudes(flown, planned) : times(flown, planned);
    const read = (side: Side): (number | null)[] => {
      const values = side.strips.channels[strip]?.values;
      return at.map((x) => (values === undefined ? null : valueAt(side, axis, values, x)));
    };
    out.push({ quantity, axis, at, planned: read(planned), flown: read(flown) });
  };
  add('pitch_deg', 'altitude_m');
  add('throttle', 'time_s');
  add('thrustToWeight', 'time_s');
  if (flown.flight.mission.world.atmosphere !== null) add('dynamicPressure_Pa', 'altitude_m');
  return out;
}

function times(a: Side, b: Side): number[] {
  const end = Math.max(a.flight.time[a.span.end]!, b.flight.time[b.span.end]!);
  return Array.from({ length: POINTS + 1 }, (_, k) => (end * k) / POINTS);
}

/** Up to the lower of the two highest points before cutoff. */
function altitudes(a: Side, b: Side): number[] {
  const top = Math.min(highest(a), highest(b));
  return Array.from({ length: POINTS + 1 }, (_, k) => (top * k) / POINTS);
}

function highest({ flight, span }: Side): number {
  let top = 0;
  for (let i = flight.liftOffIndex; i <= span.end; i++) top = Math.max(top, flight.altitude[i]!);
  return top;
}

function valueAt(side: Side, axis: DeviationCurve['axis'], values: Float64Array, x: number): number | null {
  const { flight, span } = side;
  const along = axis === 'altitude_m' ? flight.altitude : flight.time;
  for (let i = flight.liftOffIndex; i <= span.end; i++) {
    if (along[i]! < x) continue;
    const before = i > flight.liftOffIndex ? i - 1 : i;
    const step = along[i]! - along[before]!;
    const share = step > 0 ? (x - along[before]!) / step : 1;
    const value = values[before]! + share * (values[i]! - values[before]!);
    return Number.isFinite(value) ? value : null;
  }
  return null;
}

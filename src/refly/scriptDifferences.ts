import type { LowerGroup } from './contributions.ts';
import { straightLines } from './controls.ts';
import type { FlightScript, StageScript } from './flightScript.ts';

/** Differences smaller than these are none: a tenth of a degree, 0.3 %, 0.1 s, 0.02 %. */
const PITCH_RAD = (0.1 * Math.PI) / 180;
const THROTTLE = 0.003;
const TIMING_S = 0.1;
const VEHICLE = 2e-4;

/** Which groups differ between two scripts, up to the last stage and in it. */
export function differences(
  a: FlightScript,
  b: FlightScript,
  last: number,
): { readonly lower: ReadonlySet<LowerGroup>; readonly lastThrottle: boolean } {
  const lower = new Set<LowerGroup>();
  for (let s = 0; s <= last; s++) {
    const one = a.stages[s]!;
    const other = b.stages[s]!;
    if (s < last) {
      if (apart(one, other, 'pitch_rad') > PITCH_RAD) lower.add('pitch');
      if (apart(one, other, 'throttle') > THROTTLE) lower.add('throttle');
      if (Math.abs((one.separation_s ?? 0) - (other.separation_s ?? 0)) > TIMING_S) lower.add('timing');
      if (one.burns.length !== other.burns.length) lower.add('timing');
      const load = a.rocket.stages[one.stage]!.propellantMass_kg;
      one.burns.forEach((burn, k) => {
        const same = other.burns[k];
        if (same !== undefined && Math.abs((burn.left_kg ?? 0) - (same.left_kg ?? 0)) > VEHICLE * load)
          lower.add('timing');
      });
    }
    if (Math.abs((one.burns[0]?.coast_s ?? 0) - (other.burns[0]?.coast_s ?? 0)) > TIMING_S)
      lower.add('timing');
    const engine = a.rocket.stages[one.stage]!;
    const force = b.rocket.stages[one.stage]!.thrustVacuum_N;
    const isp = b.rocket.stages[one.stage]!.ispVacuum_s;
    if (Math.abs(engine.thrustVacuum_N - force) > 5 * VEHICLE * force) lower.add('vehicle');
    if (Math.abs(engine.ispVacuum_s - isp) > VEHICLE * isp) lower.add('vehicle');
  }
  if (Math.abs(a.rocket.payload_kg - b.rocket.payload_kg) > 1) lower.add('vehicle');
  return { lower, lastThrottle: apart(a.stages[last]!, b.stages[last]!, 'throttle') > THROTTLE };
}

/** Mean difference of a control over the propellant that both had used. */
function apart(a: StageScript, b: StageScript, control: 'pitch_rad' | 'throttle'): number {
  const one = straightLines(a.used_kg, a[control]);
  const other = straightLines(b.used_kg, b[control]);
  const end = Math.min(a.used_kg.at(-1)!, b.used_kg.at(-1)!);
  let sum = 0;
  const points = 100;
  for (let k = 0; k < points; k++) sum += Math.abs(one((end * k) / points) - other((end * k) / points));
  return sum / points;
}

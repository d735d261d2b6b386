/** A stamp this many usual steps away from its neighbours is no late packet. */
const FAR_STEPS = 20;

/**
 * Positions, among rows in file order, whose time lies far from both neighbours while the neighbours follow each
 * other: a damaged stamp, not a row out of order and not a new flight.
 */
export function wildTimes(times: Float64Array, step: number): number[] {
  const found: number[] = [];
  const limit = FAR_STEPS * step;
  if (!(limit > 0)) return found;
  let before = times[0]!;
  for (let k = 1; k + 1 < times.length; k++) {
    const here = times[k]!;
    const next = times[k + 1]!;
    const goesOn = next > before && next - before <= limit;
    if (goesOn && (here - next > limit || before - here > limit)) found.push(k);
    else before = here;
  }
  return found;
}

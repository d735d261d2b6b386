/** A flight that never outruns the ground passes the least reading if it comes this near to it, as a share of it. */
const MEETS_SHARE = 0.05;

/**
 * Where a flight against the world's spin is slower over the ground than the ground itself moves against its course.
 * The horizontal inertial speed √((u·sin χ + Ω)² + (u·cos χ)²) then belongs to two speeds u over the ground: it falls
 * from Ω at rest to Ω·|cos χ| at u = −Ω·sin χ and rises from there on. The lower u holds from rest to that least value
 * on the way up, and from it to rest on the way down.
 * @param level_m_s horizontal inertial speed at each row; NaN = missing
 * @param altitude_m at each row
 * @param turning_m_s the ground's own speed Ω to the east at the site; negative where the world turns westward
 * @param course_rad of the path off the pad
 * @returns 1 at the rows where the lower u holds
 */
export function slowAgainstSpin(
  level_m_s: Float64Array,
  altitude_m: Float64Array,
  turning_m_s: number,
  course_rad: number,
): Uint8Array {
  const n = level_m_s.length;
  const slow = new Uint8Array(n);
  const against = -turning_m_s * Math.sin(course_rad);
  if (!(against > 0)) return slow;
  let top = 0;
  for (let i = 1; i < n; i++) if (altitude_m[i]! > altitude_m[top]!) top = i;
  // Faster than the ground itself only the higher u is left.
  const both = (i: number): boolean => level_m_s[i]! <= Math.abs(turning_m_s);
  let up = top;
  while (up > 0 && !both(up)) up--;
  let down = top;
  while (down < n && !both(down)) down++;
  const turnUp = leastBetween(level_m_s, 0, up);
  const turnDown = leastBetween(level_m_s, Math.min(down, n - 1), n - 1);
  if (up === top) {
    const least = Math.min(level_m_s[turnUp]!, level_m_s[turnDown]!);
    const aside = turning_m_s * Math.cos(course_rad);
    if (Math.sqrt(Math.max(0, least * least - aside * aside)) > MEETS_SHARE * against) return slow.fill(1);
  }
  slow.fill(1, 0, turnUp);
  if (down < n) slow.fill(1, turnDown + 1);
  return slow;
}

/** Index of the least value from `from` to `to`; `from` where all are missing. */
function leastBetween(values: Float64Array, from: number, to: number): number {
  let least = from;
  for (let i = from; i <= to; i++)
    if (!(values[least]! <= values[i]!) && Number.isFinite(values[i]!)) least = i;
  return least;
}

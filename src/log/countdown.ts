/**
 * A countdown written without its sign: times fall steadily to zero and rise again. Returns the number of rows
 * to be made negative, 0 where there is no such beginning.
 */
export function unsignedCountdown(time: Float64Array): number {
  let down = 0;
  while (down + 1 < time.length && time[down + 1]! < time[down]!) down++;
  const lowest = time[down] ?? 0;
  const next = time[down + 1] ?? 0;
  if (down < 3 || down + 2 >= time.length || lowest < 0) return 0;
  const stepDown = (time[0]! - lowest) / down;
  const stepUp = time[down + 2]! - next;
  // The counts next to zero are within two steps of it; both sides count at the same pace.
  if (lowest > 2 * stepDown || stepUp > 3 * stepDown || stepUp < stepDown / 3) return 0;
  if (lowest === 0) return down;
  // The lowest count lies on the side of zero that makes the pace more even.
  const before = Math.abs(lowest + next - stepDown);
  const behind = Math.abs(time[down - 1]! + lowest - stepDown);
  return before <= behind ? down + 1 : down;
}

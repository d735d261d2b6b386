/** Written values in SI: times the unit's factor, plus its offset; those themselves where that changes nothing. */
export function inUnit(
  written: Float64Array,
  { factor, offset }: { readonly factor: number; readonly offset: number },
): Float64Array {
  if (factor === 1 && offset === 0) return written;
  const out = new Float64Array(written.length);
  for (let i = 0; i < written.length; i++) out[i] = written[i]! * factor + offset;
  return out;
}

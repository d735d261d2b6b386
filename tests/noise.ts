/** Seeded random numbers for tests: the same at every run. */

/** Uniform numbers in [0, 1): mulberry32, a 32-bit generator in the public domain. */
function uniformNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let x = Math.imul(state ^ (state >>> 15), state | 1);
    x = (x + Math.imul(x ^ (x >>> 7), x | 61)) ^ x;
    return ((x ^ (x >>> 14)) >>> 0) / 4294967296;
  };
}

/** Standard normal numbers (Box & Muller 1958). */
export function normalNumbers(seed: number): () => number {
  const uniform = uniformNumbers(seed);
  let kept: number | null = null;
  return () => {
    if (kept !== null) {
      const out = kept;
      kept = null;
      return out;
    }
    const size = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    kept = size * Math.sin(angle);
    return size * Math.cos(angle);
  };
}

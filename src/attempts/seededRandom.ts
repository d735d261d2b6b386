/**
 * Numbers from 0 to 1 that are the same at every run, so that a figure drawn by lot can be drawn again
 * (mulberry32, Tommy Ettinger 2017, public domain).
 */
export function seededRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

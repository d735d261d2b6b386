import type { Burn, MassDrop } from './types.ts';

/** Index of the lowest stage still attached at each axis point. */
export function stageAlong(n: number, burns: readonly Burn[], drops: readonly MassDrop[]): Int16Array {
  const out = new Int16Array(n);
  const firstBurn = burns[0];
  const before =
    firstBurn === undefined
      ? 0
      : drops.filter((d) => d.kind === 'separation' && d.index < firstBurn.startIndex).length;
  let stage = firstBurn === undefined ? 0 : Math.max(0, firstBurn.stage - before);
  let d = 0;
  let b = 0;
  for (let i = 0; i < n; i++) {
    while (d < drops.length && drops[d]!.index < i) {
      if (drops[d]!.kind === 'separation') stage++;
      d++;
    }
    while (b < burns.length && burns[b]!.startIndex <= i) stage = Math.max(stage, burns[b++]!.stage);
    out[i] = stage;
  }
  return out;
}

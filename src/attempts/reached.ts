import type { VerdictCode } from '../review/types.ts';
import type { Attempt } from './types.ts';

const onTarget: readonly VerdictCode[] = ['in-orbit', 'suborbital-as-planned', 'escape'];
const wholeAscent: readonly VerdictCode[] = [...onTarget, 'orbit-off-target', 'orbit-decaying'];

/** True for an attempt that made its orbit (or its target). */
export function reached({ verdict }: Pick<Attempt, 'verdict'>): boolean {
  return onTarget.includes(verdict.code);
}

/** True for an attempt that flew its ascent to the end, well or not so well. */
export function broughtOff({ verdict }: Pick<Attempt, 'verdict'>): boolean {
  return wholeAscent.includes(verdict.code);
}

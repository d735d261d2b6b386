import { setFlagsFromString } from 'node:v8';

/**
 * How much of a function must have run before the optimising compiler takes it up, in bytes of bytecode, as V8 11
 * (Node 20) has it and as serves a review: that of a small log is over before such work pays, and a large log soon gets
 * there. Later engines compile in more tiers and are left to themselves.
 */
const USUAL_BYTES = 67_584;
const PATIENT_BYTES = 500_000;

const oneTier = process.versions.v8.startsWith('11.');

/**
 * Lets functions run longer before they are optimised. What Node has compiled of itself is good for the usual flags
 * only: whatever of it is needed should be loaded before.
 */
export function hurryLess(): void {
  if (oneTier) setFlagsFromString(`--interrupt-budget=${PATIENT_BYTES}`);
}

/** The engine's own pace again, for large logs, for many, and at the end. */
export function hurryAsUsual(): void {
  if (oneTier) setFlagsFromString(`--interrupt-budget=${USUAL_BYTES}`);
}

/** The part of a review that flies the flight again: loaded for those reviews alone that ask for causes. */
import { pitchFindings } from './findings/pitch.ts';
import { stagingFindings } from './findings/staging.ts';
import { throttleFindings } from './findings/throttle.ts';
import type { Finder } from './findings/types.ts';
import { vehicleFindings } from './findings/vehicle.ts';

export { reflown } from '../refly/reflown.ts';
export { planPart } from './planPart.ts';
export { whyNot } from './whyNot.ts';

/** Finders whose costs come from re-flying or from a plan. */
export const causeFinders: readonly Finder[] = [
  pitchFindings,
  throttleFindings,
  stagingFindings,
  vehicleFindings,
];

import type { RoundTrip } from './roundTrip.ts';

/** Tansy's way there and back: raised, circularised too soon, plane turned, deorbited, down by parachute. */
export const homeward: RoundTrip = {
  wait_s: 620,
  raiseTo_m: 260_000,
  lead_m_s: 14,
  beforePlane_s: 420,
  plane_s: 3,
  beforeDeorbit_s: 500,
  deorbitPeriapsis_m: 22_000,
  capsule: {
    bareDragArea_m2: 6.2 * 1.25,
    dragArea_m2: 540,
    reefed: 0.12,
    openAltitude_m: 6000,
    fullAltitude_m: 3000,
  },
};

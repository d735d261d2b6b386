import type { FlightStep } from './flightProgram.ts';
import type { FlightScript } from './flightScript.ts';
import { LastStage, toGoProblem } from './lastStage.ts';
import { burnSteps } from './mixedFlight.ts';
import { apsidesOf, reachesOrbit, type SingleChange } from './reach.ts';
import { type ReflownFlight, unmixed } from './reflown.ts';

const CLOSING = 20;

/**
 * How much longer the last burn had to go on, with the pitch that it ended with, to come into orbit; null where it
 * would not have, or was not cut off early.
 */
export function burnLonger(base: ReflownFlight): SingleChange | null {
  const { mission, script, last, handover } = base;
  const problem = toGoProblem(mission);
  if (problem === null) return null;
  const stage = new LastStage(mission, problem, script, last);
  const open = withoutCutoff(script, last);
  const steps = burnSteps(unmixed(open), last, mission);
  const flown_s = base.flown.end.time_s;
  const fly = (longer_s: number) => {
    const until: FlightStep[] = steps.map((step, k) =>
      k === steps.length - 1 && step.do === 'burn'
        ? { ...step, until: { kind: 'time', time_s: flown_s + longer_s } }
        : step,
    );
    return stage.fly(handover, until);
  };
  const left_s =
    (base.flown.end.left_m_s > 0 ? stage.burn_s : 0) *
    (1 - Math.min(1, (flown_s - handover.start.time_s) / stage.burn_s) + 0.05);
  const inOrbit = (longer_s: number): boolean =>
    apsidesOf(mission, fly(longer_s)).periapsisAltitude_m >= mission.world.orbitFloor_m;
  let high = Number.NaN;
  let low = 0;
  // The periapsis comes up and goes down again where thrust goes on too long: small steps first.
  for (let t = 1; t <= left_s; t = Math.max(t + 1, t * 1.25)) {
    if (inOrbit(t)) {
      high = t;
      break;
    }
    low = t;
  }
  if (Number.isNaN(high)) return null;
  for (let k = 0; k < CLOSING && high - low > 1e-3; k++) {
    const middle = (low + high) / 2;
    if (inOrbit(middle)) high = middle;
    else low = middle;
  }
  const end = fly(high);
  if (!reachesOrbit(mission, end)) return null;
  return { kind: 'burn-longer', amount: high, end, nineTenths: fly(0.9 * high) };
}

function withoutCutoff(script: FlightScript, last: number): FlightScript {
  return {
    ...script,
    stages: script.stages.map((s, k) =>
      k === last
        ? { ...s, burns: s.burns.map((b, i) => (i === s.burns.length - 1 ? { ...b, left_kg: null } : b)) }
        : s,
    ),
  };
}

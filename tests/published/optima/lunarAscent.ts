import { Ascent } from '../../../src/refly/ascent.ts';
import { constrainedMinimum } from '../../../src/refly/constrainedMinimum.ts';
import type { Program } from '../../../src/refly/controls.ts';
import { held, linearTangent } from '../../../src/refly/controls.ts';
import type { FlightResult } from '../../../src/refly/flightProgram.ts';
import { flatMoon, lunarRocket } from '../simulated/lunarLinearTangent.ts';
import { splineControl } from './splineControl.ts';

const goal = { altitude_m: 185000, speed_m_s: 1627, climb_m_s: 0 };
const search = { difference: 1e-4, met: 1e-9, gain: 1e-9, rounds: 200 };
const ascent = new Ascent(flatMoon, lunarRocket, {
  shape: 'flat',
  carryLosses: false,
  relativeTolerance: 1e-11,
});

function fly(pitch: Program, time_s: number, c: Float64Array): FlightResult {
  const result = ascent.fly({
    start: {
      kind: 'pad',
      latitude_rad: 0,
      longitude_rad: 0,
      altitude_m: 0,
      course_rad: Math.PI / 2,
      holdDown_s: 0,
    },
    controls: { throttle: held(1), pitch, heading: held(Math.PI / 2) },
    steps: [{ do: 'burn', until: { kind: 'time', time_s } }],
  });
  const s = ascent.observe(result.time_s, result.state);
  c[0] = (s.altitude_m - goal.altitude_m) / 1e5;
  c[1] = (s.horizontalSpeed_m_s - goal.speed_m_s) / 1e3;
  c[2] = (s.verticalSpeed_m_s - goal.climb_m_s) / 1e3;
  return result;
}

/** Constants of tan θ = b + a·t (the book's letters) and the time that reach the goal. */
export function lunarByPrinciple(): { a_per_s: number; b: number; time_s: number; miss: number } {
  const end = constrainedMinimum(
    {
      size: 3,
      constraints: 3,
      lower: Float64Array.of(0, -5, 1),
      upper: Float64Array.of(10, 5, 9),
      evaluate: (x, c) => {
        const [b = 0, fall = 0, time = 1] = x;
        const { end: how } = fly(linearTangent(b, fall / 100), 100 * time, c);
        return how === 'flown' ? time : Number.NaN;
      },
    },
    [1.5, 0.5, 4],
    search,
  );
  return { b: end.x[0]!, a_per_s: -end.x[1]! / 100, time_s: 100 * end.x[2]!, miss: end.miss };
}

/** Least time by search alone, the pitch free in some nodes. */
export function lunarBySearch(nodes: number): { time_s: number; settled: boolean } {
  const size = nodes + 1;
  const end = constrainedMinimum(
    {
      size,
      constraints: 3,
      lower: new Float64Array(size).fill(-1.5),
      upper: new Float64Array(size).fill(9),
      evaluate: (x, c) => {
        const time_s = 100 * x[nodes]!;
        const times = Array.from({ length: nodes }, (_, k) => (time_s * k) / (nodes - 1));
        const { end: how } = fly(splineControl(times, x), time_s, c);
        return how === 'flown' ? x[nodes]! : Number.NaN;
      },
    },
    [...Array.from({ length: nodes }, (_, k) => 1.2 - (1.8 * k) / (nodes - 1)), 5],
    search,
  );
  return { time_s: 100 * end.value, settled: end.settled };
}

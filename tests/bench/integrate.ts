import { Solver } from 'odex';
import { Dop853 } from '../../src/refly/dop853.ts';

/** Initial state, end and tolerance of the trajectory that both integrators fly; the same numbers stand in dop853.py. */
const START = [6_378_137, 0, 10, 400, 100_000] as const;
const END_S = 300;
const TOLERANCE = 1e-9;

/**
 * An ascent in the plane over the Earth with air and falling mass: radius, angle, radial and tangential speed, mass.
 * Thrust holds a pitch that falls with time.
 */
function rate(t: number, y: Float64Array, out: Float64Array): void {
  const [r, , up, along, m] = y as unknown as readonly [number, number, number, number, number];
  const speed = Math.sqrt(up * up + along * along);
  const drag = (0.5 * 1.225 * Math.exp(-(r - 6_378_137) / 7200) * speed * 3) / m;
  const pitch = 1.5 * Math.exp(-t / 150);
  const push = 1.6e6 / m;
  out[0] = up;
  out[1] = along / r;
  out[2] = push * Math.sin(pitch) - drag * up - 3.986004418e14 / (r * r) + (along * along) / r;
  out[3] = push * Math.cos(pitch) - drag * along - (up * along) / r;
  out[4] = -250;
}

/** Flies the trajectory so often and returns milliseconds for one, and the last radius. */
export function flyOften(times: number): { each_ms: number; radius_m: number; evaluations: number } {
  const integrator = new Dop853(5, rate, { relativeTolerance: TOLERANCE, absoluteTolerance: TOLERANCE });
  const fly = (): void => {
    integrator.forgetStep();
    integrator.restart(0, START);
    while (integrator.time < END_S)
      if (!integrator.advance(END_S)) throw new Error('the integration stopped');
  };
  for (let i = 0; i < 50; i++) fly();
  const before = integrator.evaluations;
  const start = performance.now();
  for (let i = 0; i < times; i++) fly();
  const each_ms = (performance.now() - start) / times;
  return { each_ms, radius_m: integrator.state[0]!, evaluations: (integrator.evaluations - before) / times };
}

/** The same by odex (an extrapolation method), at the same tolerance. */
export function flyOftenByOdex(times: number): { each_ms: number; radius_m: number; evaluations: number } {
  const out = [0, 0, 0, 0, 0];
  let evaluations = 0;
  const fly = (): number => {
    const solver = new Solver(5);
    solver.absoluteTolerance = TOLERANCE;
    solver.relativeTolerance = TOLERANCE;
    const end = solver.solve(
      (t, y) => {
        evaluations++;
        rate(t, y as unknown as Float64Array, out as unknown as Float64Array);
        return out.slice();
      },
      0,
      [...START],
      END_S,
    );
    return end.y[0]!;
  };
  for (let i = 0; i < 20; i++) fly();
  evaluations = 0;
  const start = performance.now();
  let radius_m = 0;
  for (let i = 0; i < times; i++) radius_m = fly();
  return { each_ms: (performance.now() - start) / times, radius_m, evaluations: evaluations / times };
}

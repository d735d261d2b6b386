import type { Log } from '../log/types.ts';
import type { Mission } from '../mission/types.ts';
import { radiusAt_m } from '../world/radius.ts';
import type { Air } from '../world/types.ts';
import type { Axis } from './axis.ts';
import type { RawBurn } from './burnEdges.ts';
import { coastAltitude, coastPart, coastSpeeds, NO_DRAG_PA } from './coastFit.ts';
import type { Kinematics } from './kinematics.ts';
import { finiteSamples, type Samples } from './steps.ts';
import type { CutoffState } from './types.ts';

/** Noise from which the coast is asked: below it single samples are as good. */
const NOISY_SPEED_M_S = 0.1;
const NOISY_ALTITUDE_M = 0.5;
/** Samples, or edges of a staircase, from which a parabola through the coast is trusted. */
const FEWEST_SAMPLES = 12;
const FEWEST_STEPS = 40;

/**
 * Lets the coast after each cutoff tell the state at cutoff (see coastFit). Changes the path's arrays in place and
 * returns how sure each state then is.
 * @param latitude along the flight, rad, on the axis
 */
export function settleCoasts(
  log: Log,
  t: Float64Array,
  axis: Axis,
  mission: Mission,
  path: Kinematics,
  burns: readonly RawBurn[],
  latitude: Float64Array,
): CutoffState[] {
  const states: CutoffState[] = [];
  const speed = finiteSamples(t, log.channels.speed ?? new Float64Array(0));
  const altitude = informative(log, t);
  const stepped = log.resolution.altitude !== undefined;
  burns.forEach((burn, k) => {
    if (burn.endsAfterLog) return;
    const from = axis.burnEnd[k]!;
    const next = burns[k + 1] === undefined ? axis.time.length - 1 : axis.burnStart[k + 1]!;
    const part = coastPart({ start_s: axis.time[from]!, end_s: axis.time[next]! });
    let to = from;
    while (to < next && axis.time[to + 1]! <= part.end_s && isDragFree(mission, path, to + 1)) to++;
    if (to - from < 3 || !isDragFree(mission, path, from)) return;
    const state = {
      index: from,
      altitude_m: Number.NaN,
      verticalSpeed_m_s: Number.NaN,
      speed_m_s: Number.NaN,
    };
    if (path.altitudeSigma_m > NOISY_ALTITUDE_M) {
      const fit = coastAltitude(
        mission.world,
        axis.time,
        from,
        to,
        altitude,
        stepped ? FEWEST_STEPS : FEWEST_SAMPLES,
      );
      if (fit !== null) {
        path.altitude.set(fit.altitude, from);
        state.altitude_m = (3 * path.altitudeSigma_m) / Math.sqrt(fit.count);
        if (log.channels.verticalSpeed === undefined) {
          path.verticalSpeed.set(fit.rate, from);
          state.verticalSpeed_m_s = fit.rateSigma;
        }
      }
    }
    if (path.speedSigma_m_s > NOISY_SPEED_M_S && log.channels.speed !== undefined) {
      const radius = path.altitude.map((h, i) => radiusAt_m(mission.world, h, latitude[i]!));
      const settled = coastSpeeds(
        mission.world,
        latitude,
        axis.time,
        radius,
        from,
        to,
        speed,
        path.speedSigma_m_s,
      );
      if (settled !== null) {
        path.speed.set(settled.speeds, from);
        state.speed_m_s = path.speedSigma_m_s / Math.sqrt(settled.count);
      }
    }
    states.push(state);
  });
  return states;
}

/** The altitude's samples; of a staircase its edges: between two rows it crossed the middle of their levels. */
function informative(log: Log, t: Float64Array): Samples {
  const all = finiteSamples(t, log.channels.altitude ?? new Float64Array(0));
  if (log.resolution.altitude === undefined) return all;
  const at: number[] = [];
  const y: number[] = [];
  for (let i = 1; i < all.t.length; i++) {
    if (all.y[i] === all.y[i - 1]) continue;
    at.push((all.t[i]! + all.t[i - 1]!) / 2);
    y.push((all.y[i]! + all.y[i - 1]!) / 2);
  }
  return { t: Float64Array.from(at), y: Float64Array.from(y) };
}

function isDragFree(mission: Mission, path: Kinematics, i: number): boolean {
  const model = mission.world.atmosphere;
  if (model === null) return true;
  const air: Air = { temperature_K: 0, pressure_Pa: 0, density_kg_m3: 0, soundSpeed_m_s: 0 };
  model.at(path.altitude[i]!, air);
  return 0.5 * air.density_kg_m3 * path.speed[i]! ** 2 < NO_DRAG_PA;
}

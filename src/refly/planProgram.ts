import type { Mission } from '../mission/types.ts';
import type { Plan, PlanEvent } from '../plan/types.ts';
import { type Controls, held, type Program, stateTable, timeTable } from './controls.ts';
import type { FlightProgram, FlightStep, Until } from './flightProgram.ts';
import type { Rocket } from './rocket.ts';
import { untilTargetEnergy } from './targetEnergy.ts';

/** From burn-out to separation and from there to ignition where a plan does not say, s. */
const STAGING_DELAY_S = 1;
/** Flown on after the last cutoff, so that it is seen as one, s. */
const AFTERWARDS_S = 5;

/**
 * The flight program of a plan for a rocket. Ignitions, cutoffs and separations come at the plan's moments; where
 * it has none, a stage burns until empty, is dropped 1 s later and the next lit 1 s after that, and the last one
 * burns until its orbit has the target's energy.
 * @param pitch what the thrust axis does where the plan says nothing of it; null = the plan must say
 */
export function planProgram(
  plan: Plan,
  rocket: Rocket,
  mission: Mission,
  pitch: Program | null,
): FlightProgram {
  const { site } = mission;
  const controls: Controls = {
    pitch: plan.pitch_rad === null ? (pitch ?? held(Math.PI / 2)) : along(plan, plan.pitch_rad),
    throttle: plan.throttle === null ? held(1) : along(plan, plan.throttle),
    heading: held(site.launchAzimuth_rad),
  };
  const steps: FlightStep[] = [];
  const events = plan.events.filter((e) => ['ignition', 'cutoff', 'separation'].includes(e.name));
  let next = 0;
  const take = (name: string, stage: number): PlanEvent | null => {
    const e = events[next];
    if (e === undefined || e.name !== name || !concerns(e, rocket, stage)) return null;
    next++;
    return e;
  };
  let holdDown_s = 0;
  let cutBefore = false;
  for (let stage = 0; stage < rocket.stages.length; stage++) {
    const last = stage === rocket.stages.length - 1;
    const lit = take('ignition', stage);
    // A flight that shows a stage burnt out and the next one never lit is flown so.
    if (plan.form === 'flight' && cutBefore && lit === null) break;
    // Lit before it is let go: what burns on the pad is not there for the flight.
    if (stage === 0 && lit !== null && plan.axis === 'time') holdDown_s = Math.max(0, -lit.at);
    if (stage > 0) {
      const until: Until =
        lit === null ? { kind: 'duration', duration_s: STAGING_DELAY_S } : reached(plan, lit.at);
      steps.push({ do: 'coast', until });
    }
    const off = take('cutoff', stage);
    cutBefore = off !== null;
    if (off !== null) steps.push({ do: 'burn', until: reached(plan, off.at) });
    else
      steps.push({
        do: 'burn',
        until: last ? untilTargetEnergy(mission.world, mission.target) : { kind: 'empty' },
      });
    // Further burns of the same stage.
    for (let again = take('ignition', stage); again !== null; again = take('ignition', stage)) {
      steps.push({ do: 'coast', until: reached(plan, again.at) });
      const end = take('cutoff', stage);
      steps.push({
        do: 'burn',
        until: end === null ? untilTargetEnergy(mission.world, mission.target) : reached(plan, end.at),
      });
    }
    if (last) break;
    const drop = take('separation', stage);
    const until: Until =
      drop === null ? { kind: 'duration', duration_s: STAGING_DELAY_S } : reached(plan, drop.at);
    steps.push({ do: 'coast', until }, { do: 'separate' });
  }
  steps.push({ do: 'coast', until: { kind: 'duration', duration_s: AFTERWARDS_S } });
  return {
    start: {
      kind: 'pad',
      latitude_rad: site.latitude_rad,
      longitude_rad: 0,
      altitude_m: site.altitude_m,
      course_rad: site.launchAzimuth_rad,
      holdDown_s,
    },
    controls,
    steps,
  };
}

function concerns(event: PlanEvent, rocket: Rocket, stage: number): boolean {
  const named = rocket.stages.some((s) => s.name === event.subject);
  return !named || rocket.stages[stage]?.name === event.subject;
}

function along(plan: Plan, values: Float64Array): Program {
  if (plan.axis === 'time') return timeTable(plan.axisValues, values);
  return stateTable(plan.axis === 'altitude' ? 'altitude_m' : 'speed_m_s', plan.axisValues, values);
}

function reached(plan: Plan, at: number): Until {
  if (plan.axis === 'time') return { kind: 'time', time_s: at };
  const key = plan.axis === 'altitude' ? 'altitude_m' : 'speed_m_s';
  return { kind: 'condition', value: (s) => s[key] - at, direction: 1 };
}

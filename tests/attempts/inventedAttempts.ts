import type { Attempt, HabitName } from '../../src/attempts/types.ts';
import { figure, unavailable } from '../exchange/handMadeReview.ts';

export interface Invented {
  readonly name: string;
  readonly pilot?: string;
  readonly attempt?: number | null;
  readonly date?: string;
  readonly margin?: number | null;
  readonly half?: number;
  readonly payload_kg?: number;
  readonly habits?: Partial<Record<HabitName, number>>;
  readonly phases?: Attempt['phases'];
  /** Projected total at each hundredth of the way to 5,000 m/s spent. */
  readonly total?: (spent: number) => number;
}

/** An attempt by hand. */
export function invented(what: Invented): Attempt {
  const spent_m_s = Array.from({ length: 101 }, (_, k) => 50 * k);
  const total = what.total ?? ((s: number) => 4000 + 0.3 * s);
  const margin = what.margin === undefined ? 100 : what.margin;
  const half = what.half ?? 1;
  return {
    name: what.name,
    pilot: what.pilot ?? 'Tansy',
    vehicle: 'Bobstay',
    mission: 'Long Ladder',
    world: 'Osselby',
    target: 'orbit 160 × 160 km',
    payload_kg: what.payload_kg ?? 3000,
    attempt: what.attempt === undefined ? null : what.attempt,
    date: what.date ?? null,
    verdict: { code: 'in-orbit', text: 'In orbit.' },
    scores: {
      margin_m_s: margin === null ? unavailable('the log has no mass') : figure(margin, half),
      projectedTotal_m_s: figure(total(5000), half),
      spent_m_s: figure(5000, half),
      toGo_m_s: figure(0, half),
      remaining_m_s: figure(margin ?? 0, half),
      gravity_m_s: figure(1000, half),
      drag_m_s: figure(120, half),
      steering_m_s: figure(150, half),
      backPressure_m_s: figure(50, half),
      propellantLeft_kg: figure(900, 3),
    },
    habits: {
      pitchOverTime_s: null,
      pitchOverAngle_deg: null,
      thrustToWeightAtMaxQ: null,
      angleOfAttackInAir_deg: null,
      cutoffError_m_s: null,
      ...what.habits,
    },
    phases: what.phases ?? [],
    curve: {
      spent_m_s,
      time_s: spent_m_s.map((s) => s / 12.5),
      total_m_s: spent_m_s.map(total),
      margin_m_s: spent_m_s.map((s) => 6000 - total(s)),
    },
    path: { downrange_m: [0, 1000], altitude_m: [0, 2000] },
    events: [
      { name: 'lift-off', spent_m_s: 0, time_s: 0 },
      { name: 'pitch-over', spent_m_s: 150, time_s: 12 },
    ],
  };
}

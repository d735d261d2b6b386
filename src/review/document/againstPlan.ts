import type { BudgetCurves } from './budget.ts';
import type { EventName } from './course.ts';
import type { Figure } from './figure.ts';

/** A quantity of the flight and of the plan on one axis. null = not reached or not known there. */
export interface DeviationCurve {
  readonly quantity: 'pitch_deg' | 'throttle' | 'thrustToWeight' | 'dynamicPressure_Pa';
  /** What the axis counts, in the unit that its name says. */
  readonly axis: 'altitude_m' | 'time_s';
  readonly at: readonly number[];
  readonly planned: readonly (number | null)[];
  readonly flown: readonly (number | null)[];
}

/** State at an event: flown − planned is the difference. */
export interface ComparedState {
  readonly planned: number | null;
  readonly flown: number | null;
  readonly difference: number | null;
}

/** The flight against the plan, which is flown by the same rocket with the same payload (METHODS §6). */
export interface AgainstPlan {
  readonly plan: {
    readonly name: string;
    /** `table` = sparse controls, `flight` = a full profile or another flight. */
    readonly form: 'table' | 'flight';
    /** What was taken because plan or card do not say it, one sentence each. */
    readonly assumed: readonly string[];
    /** Whether the plan, as flown by this rocket, reaches the target; in words. */
    readonly text: string;
  };
  readonly events: readonly {
    readonly name: EventName;
    readonly subject: string | null;
    readonly time_s: ComparedState;
    readonly altitude_m: ComparedState;
    readonly speed_m_s: ComparedState;
    readonly mass_kg: ComparedState;
    /** Aboard the whole vehicle. */
    readonly propellant_kg: ComparedState;
  }[];
  readonly cutoffs: readonly {
    /** Stage that was cut off. */
    readonly subject: string;
    readonly states: Readonly<
      Record<
        | 'time_s'
        | 'altitude_m'
        | 'speed_m_s'
        | 'inertialSpeed_m_s'
        | 'flightPathAngle_deg'
        | 'apoapsisAltitude_m'
        | 'periapsisAltitude_m'
        | 'mass_kg',
        ComparedState
      >
    >;
  }[];
  readonly deviations: readonly DeviationCurve[];
  /** Margin and projected total against delta-v spent, m/s. */
  readonly margin: {
    readonly spent: readonly number[];
    readonly planned: readonly (number | null)[];
    readonly flown: readonly (number | null)[];
    readonly plannedTotal: readonly (number | null)[];
    readonly flownTotal: readonly (number | null)[];
  };
  /** The plan's own margin curve against time, for charts. */
  readonly plannedCurves: BudgetCurves;
  /** Budget at the end of the plan's ascent, m/s. */
  readonly planned: {
    readonly spent: number | null;
    readonly toGo: number | null;
    readonly projectedTotal: number | null;
    readonly margin: number | null;
  };
  /** Projected total flown less planned, at the end of each ascent. */
  readonly avoidable: { readonly deltaV_m_s: Figure; readonly propellant_kg: Figure };
  /** What makes up the avoidable waste, by re-flying; sums to it. */
  readonly contributions: readonly Contribution[];
}

/** One group of controls or properties and what it did to the projected total. */
export interface Contribution {
  readonly group:
    | 'pitch'
    | 'throttle'
    | 'timing'
    | 'vehicle'
    | 'last-stage-pitch'
    | 'last-stage-throttle'
    | 'cutoff'
    /** What the plan itself loses in its last stage, with this rocket and payload, more than the flight did. */
    | 'plan'
    /** What the re-flown flight misses the log by. */
    | 'model';
  readonly text: string;
  readonly deltaV_m_s: Figure;
  readonly propellant_kg: Figure;
}

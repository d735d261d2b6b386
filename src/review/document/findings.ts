import type { ChangeKind } from '../../refly/changeKind.ts';
import type { Figure } from './figure.ts';

export interface Finding {
  readonly code: string;
  readonly start_s: number;
  readonly end_s: number;
  readonly cost_m_s: Figure;
  readonly propellant_kg: Figure;
  readonly text: string;
  readonly evidence: string;
  readonly advice: string;
}

/** Why a flight is not in orbit, by re-flying. */
export interface WhyNot {
  /** From the margin: out of reach from this time at the latest; null where the margin stays positive. */
  readonly latest_s: number | null;
  /** Last instant from which the best continuation still reaches orbit; 0 = none does; null = in reach to the end. */
  readonly outOfReach_s: number | null;
  readonly spentThen_m_s: number | null;
  /** Projected total above the plan's by then; null without a plan. */
  readonly wastedThen_m_s: number | null;
  /** The smallest change of each kind that reaches orbit, smallest first. */
  readonly changes: readonly {
    readonly kind: ChangeKind;
    /** In `unit`; 0 where it has none. */
    readonly amount: number;
    readonly unit: 's' | 'kg' | 'share' | null;
    /** What to do, as a clause. */
    readonly text: string;
    /** The orbit of the flight with the change, and the periapsis with nine tenths of it. */
    readonly apoapsisAltitude_m: number;
    readonly periapsisAltitude_m: number;
    readonly nineTenthsPeriapsisAltitude_m: number | null;
  }[];
  readonly text: string;
}

import type { EventName, Figure, VerdictCode } from '../review/types.ts';
import type { Spread } from './spread.ts';

/** Columns of the table of attempts, each with its unit in its name. */
export type ScoreName =
  | 'margin_m_s'
  | 'projectedTotal_m_s'
  | 'spent_m_s'
  | 'toGo_m_s'
  | 'remaining_m_s'
  | 'gravity_m_s'
  | 'drag_m_s'
  | 'steering_m_s'
  | 'backPressure_m_s'
  | 'propellantLeft_kg';

/** What a pilot does, as numbers. */
export type HabitName =
  | 'pitchOverTime_s'
  | 'pitchOverAngle_deg'
  | 'thrustToWeightAtMaxQ'
  | 'angleOfAttackInAir_deg'
  | 'cutoffError_m_s';

/** What attempts can be put together by. */
export const groupBys = ['pilot', 'vehicle', 'mission', 'world', 'payload', 'verdict'] as const;

export type GroupBy = (typeof groupBys)[number];

/**
 * One attempt, small: what a comparison needs of a review and its strips. Made once a flight, kept instead of
 * them; 1,000 take some 5 MB by count.
 */
export interface Attempt {
  /** File, and the flight in it where it holds several. */
  readonly name: string;
  readonly pilot: string | null;
  readonly vehicle: string | null;
  readonly mission: string | null;
  readonly world: string;
  readonly target: string;
  readonly payload_kg: number | null;
  /** The card's number of the attempt, null where it gives none. */
  readonly attempt: number | null;
  readonly date: string | null;
  readonly verdict: { readonly code: VerdictCode; readonly text: string };
  readonly scores: Readonly<Record<ScoreName, Figure>>;
  /** null = not seen in the log. */
  readonly habits: Readonly<Record<HabitName, number | null>>;
  /** Rise of the projected total in each phase of the ascent, m/s. */
  readonly phases: readonly { readonly label: string; readonly cost_m_s: number }[];
  /** Projected total and margin against delta-v spent (rising), m/s; null where unknown. */
  readonly curve: {
    readonly spent_m_s: readonly number[];
    readonly time_s: readonly number[];
    readonly total_m_s: readonly (number | null)[];
    readonly margin_m_s: readonly (number | null)[];
  };
  /** The way up: altitude against arc over the ground, m. */
  readonly path: { readonly downrange_m: readonly number[]; readonly altitude_m: readonly number[] };
  readonly events: readonly {
    readonly name: EventName;
    readonly spent_m_s: number;
    readonly time_s: number;
  }[];
}

/** A stretch in which one attempt became dearer, or cheaper, than the reference. */
export interface Parting {
  /** Delta-v spent where the costs first differ beyond their intervals, and where the difference stops growing. */
  readonly fromSpent_m_s: number;
  readonly toSpent_m_s: number;
  readonly from_s: number;
  readonly to_s: number;
  /** The last event before it. */
  readonly after: EventName | null;
  /** Projected total less the reference's at the stretch's end: positive = dearer. */
  readonly cost_m_s: Figure;
  readonly text: string;
}

/** A row of the table, in the order of the comparison. */
export interface ComparisonRow {
  readonly name: string;
  readonly group: string;
  readonly attempt: number | null;
  /** Place among the group's attempts, 1 first: by number, else by date, else as given. */
  readonly order: number;
  readonly date: string | null;
  readonly verdict: { readonly code: VerdictCode; readonly text: string };
  readonly scores: Readonly<Record<ScoreName, Figure>>;
  readonly habits: Readonly<Record<HabitName, number | null>>;
  /** Against the reference; null for the reference itself, or where nothing differs beyond the intervals. */
  readonly parting: Parting | null;
}

/** A trend over a group's attempts. */
export interface Progress {
  /** m/s a attempt, Theil–Sen; null with fewer than two. */
  readonly slope: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly confidence: number;
  readonly attempts: number;
  readonly text: string;
}

export interface ComparisonGroup {
  readonly name: string;
  readonly attempts: number;
  /** Attempts that made their orbit (or their target). */
  readonly reached: number;
  readonly margin: Spread;
  readonly habits: Readonly<Record<HabitName, Spread>>;
  readonly progress: Progress;
  /** Names of the attempts that were cheapest in each phase. */
  readonly bestPhases: readonly BestPhase[];
}

export interface BestPhase {
  readonly label: string;
  readonly name: string;
  readonly cost_m_s: number;
  /** Median of the others less this one, m/s; null alone. */
  readonly saved_m_s: number | null;
}

/** One phase of a stitched flight. Differences are stitched less own. */
export interface StitchedPhase {
  readonly label: string;
  /** The attempt whose controls fly it. */
  readonly name: string;
  /** Rise of the projected total in its own flight, and as stitched, m/s. */
  readonly own_m_s: number;
  readonly stitched_m_s: number;
  /** How far the state that it takes over is from the one in which its own flight began it; null for the first. */
  readonly gap: {
    readonly time_s: number;
    readonly altitude_m: number;
    readonly speed_m_s: number;
    readonly flightPathAngle_deg: number;
    readonly spent_m_s: number;
  } | null;
  /** False where it costs more than 10 m/s over what it cost in its own flight. */
  readonly joins: boolean;
}

/** The best phases of one group's flights, put together and flown. */
export type Stitched =
  | {
      readonly kind: 'flown';
      readonly group: string;
      readonly phases: readonly StitchedPhase[];
      /** Margin with the last stage flown as in its own flight, m/s. */
      readonly asFlown_m_s: number;
      /** Margin with the last stage steered anew to the target, and what that leaves to go at cutoff, m/s. */
      readonly steered_m_s: number;
      readonly steeredToGo_m_s: number;
      /** The group's own best attempt; null where none has a margin. */
      readonly best: { readonly name: string; readonly margin_m_s: number } | null;
      readonly text: string;
    }
  | { readonly kind: 'unavailable'; readonly group: string; readonly text: string };

/** Whether a habit goes with the margin, over all comparable attempts. */
export interface HabitRelation {
  readonly habit: HabitName;
  readonly rho: number;
  readonly p: number;
  /** p after Holm's correction for as many habits as were asked. */
  readonly correctedP: number;
  readonly attempts: number;
  readonly text: string;
}

/** Two groups held against each other on the margin. */
export interface GroupDifference {
  readonly groups: readonly [string, string];
  readonly attempts: readonly [number, number];
  /** Mean margin of the first less that of the second, m/s. */
  readonly difference_m_s: number;
  readonly p: number;
  /** p after Holm's correction for as many pairs as were asked. */
  readonly correctedP: number;
  readonly exact: boolean;
  /** The least p that so few attempts could ever give. */
  readonly leastP: number;
  readonly text: string;
}

/** Several attempts side by side: plain data, versioned. */
export interface Comparison {
  readonly schema: 'lossbook-comparison/1';
  readonly by: GroupBy;
  /** Name of the attempt that the others are held against, and why it. */
  readonly reference: { readonly name: string; readonly why: string } | null;
  readonly rows: readonly ComparisonRow[];
  readonly groups: readonly ComparisonGroup[];
  readonly habits: readonly HabitRelation[];
  readonly differences: readonly GroupDifference[];
  readonly bestPhases: readonly BestPhase[];
  /** Best phases of each group put together and flown again; empty where that was not asked for. */
  readonly stitched: readonly Stitched[];
  /** Margin and projected total of every row on one axis of delta-v spent, for charts; null outside a flight. */
  readonly curves: {
    readonly spent_m_s: readonly number[];
    readonly margin_m_s: readonly (readonly (number | null)[])[];
    readonly total_m_s: readonly (readonly (number | null)[])[];
  };
  /** The ways up in the rows' order, for charts. */
  readonly paths: readonly {
    readonly downrange_m: readonly number[];
    readonly altitude_m: readonly number[];
  }[];
  /** Figures and texts that the attempts and this document hold, by count; a heap takes about twice that for them. */
  readonly bytes: number;
  /** What limits the comparison, one sentence each. */
  readonly cautions: readonly string[];
}

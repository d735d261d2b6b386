import type { ChannelReading, QualityNote } from '../log/types.ts';
import type { AgainstPlan } from './document/againstPlan.ts';
import type { BudgetBand, BudgetCurves, BudgetFigures } from './document/budget.ts';
import type { OrbitFigures, PhaseName, ReviewBurn, ReviewEvent } from './document/course.ts';
import type { Basis, Figure } from './document/figure.ts';
import type { Finding, WhyNot } from './document/findings.ts';
import type { LedgerEntries } from './document/ledger.ts';
import type { Strips } from './document/strips.ts';
import type { ReviewVehicle } from './document/vehicle.ts';
import type { VerdictCode } from './document/verdict.ts';
import type { ReviewWaste } from './document/waste.ts';
import type { OrbitWork } from './orbitWork/types.ts';
import type { WayDownReview } from './wayDown/types.ts';

export type { AgainstPlan, ComparedState, Contribution, DeviationCurve } from './document/againstPlan.ts';
export type { BudgetBand, BudgetCurves, BudgetFigures, CurveBand } from './document/budget.ts';
export type { EventName, OrbitFigures, PhaseName, ReviewBurn, ReviewEvent } from './document/course.ts';
export type { Basis, Figure } from './document/figure.ts';
export type { Finding, WhyNot } from './document/findings.ts';
export type { FrameName, LedgerEntries } from './document/ledger.ts';
export type { Strip, StripName, Strips } from './document/strips.ts';
export type { ReviewVehicle, VehicleStage } from './document/vehicle.ts';
export type { VerdictCode } from './document/verdict.ts';
export type { ReviewWaste, WasteCauseName } from './document/waste.ts';

/** Constants of the world flown from. */
export interface WorldConstants {
  readonly gravitationalParameter_m3_s2: number;
  /** Radius from which apsis altitudes are counted. */
  readonly radius_m: number;
  /** Distance from the centre of a point at altitude zero: `radius_m` on a sphere, else the ellipsoid's at the site. */
  readonly radiusAtSite_m: number;
  /** Spin about the pole, positive eastward. */
  readonly spin_rad_s: number;
  /** Geometric altitude above which there is no air; null without air. */
  readonly airTop_m: number | null;
}

/** One flight's review: plain data, versioned, the same on page, terminal, report and JSON. */
export interface Review {
  readonly schema: 'lossbook-review/1';
  readonly source: {
    readonly file: string;
    readonly rows: number;
    readonly start_s: number;
    readonly end_s: number;
    /** Median sampling rate. */
    readonly rate_Hz: number;
    readonly part: number;
    readonly parts: number;
    /** Log time of lift-off: time zero of everything else here. */
    readonly liftOffLogTime_s: number;
    readonly card: string | null;
    readonly plan: string | null;
  };
  readonly mission: {
    readonly name: string | null;
    readonly world: string;
    readonly worldSource: string;
    readonly orbitFloor_m: number;
    /** The world's constants that the figures rest on. */
    readonly constants: WorldConstants;
    /** Launch site and azimuth in degrees, longitude east; null = nothing tells it, and an assumption stands in. */
    readonly site: {
      readonly latitude_deg: number | null;
      readonly longitude_deg: number | null;
      readonly launchAzimuth_deg: number | null;
    };
    /** One line: "orbit 160 × 160 km ± 8 km". */
    readonly target: string;
    /** Apsides of the target orbit; null for a target that is no orbit. */
    readonly targetOrbit: {
      readonly apoapsisAltitude_m: number;
      readonly periapsisAltitude_m: number;
    } | null;
    readonly vehicle: string | null;
    readonly payload_kg: number | null;
    readonly pilot: string | null;
    readonly attempt: number | null;
    readonly date: string | null;
    readonly notes: string | null;
    readonly assumed: readonly string[];
  };
  /** Null where the log has too little to identify a vehicle from. */
  readonly vehicle: ReviewVehicle | null;
  readonly channels: readonly ChannelReading[];
  readonly quality: readonly QualityNote[];
  readonly events: readonly ReviewEvent[];
  readonly phases: readonly {
    readonly name: PhaseName;
    readonly start_s: number;
    readonly end_s: number;
    readonly label: string;
  }[];
  readonly ledger: {
    readonly start_s: number;
    readonly end_s: number;
    readonly ground: LedgerEntries;
    readonly inertial: LedgerEntries;
    /** |V| − |v| at the end, m/s, shown beside the ledger. */
    readonly rotationHelp: Figure;
    /** Which reading of the unseen heading was taken and why; null where the log shows it. */
    readonly headingReading: string | null;
  };
  readonly orbit: { readonly atCutoff: OrbitFigures; readonly cutoff_s: number | null };
  readonly budget: BudgetFigures & {
    /** In all tanks at the end of the ascent. */
    readonly propellantLeft_kg: Figure;
    /** Last crossing of zero margin; null when the margin stays positive or is unavailable. */
    readonly lostAt_s: number | null;
    readonly curves: BudgetCurves;
    /** Null where there is no delta-v to go. */
    readonly band: BudgetBand | null;
  };
  readonly burns: readonly ReviewBurn[];
  /** Quantities of the equation of motion and where they come from. */
  readonly derivation: readonly { readonly quantity: string; readonly basis: Basis; readonly how: string }[];
  readonly verdict: { readonly code: VerdictCode; readonly text: string; readonly detail: string };
  readonly return: WayDownReview;
  /** Burns after the ascent weighed against impulses, and the orbits that they led to. */
  readonly orbitWork: OrbitWork;
  /** Whether costs were found by re-flying; without it only what the books alone tell is among the findings. */
  readonly causesSought: boolean;
  readonly findings: readonly Finding[];
  /** Null for flights that are in orbit, and where the flight cannot be flown again. */
  readonly whyNot: WhyNot | null;
  /** Null where engine, pitch, drag or target are not known. */
  readonly waste: ReviewWaste | null;
  /** Null without a plan. */
  readonly againstPlan: AgainstPlan | null;
  readonly cautions: readonly string[];
}

/** What `reviewFlight` hands on: the document and the curves to draw. */
export interface Analysis {
  readonly review: Review;
  readonly strips: Strips;
  /** The plan's channels as flown by the same rocket, on a time axis of their own; absent without a plan. */
  readonly planStrips?: Strips;
}

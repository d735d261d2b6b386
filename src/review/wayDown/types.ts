import type { Figure } from '../types.ts';

/** A figure, and when and where it was reached. */
export interface PeakFigure {
  readonly figure: Figure;
  readonly time_s: number;
  readonly altitude_m: number;
  readonly speed_m_s: number;
}

/** The burn that left the orbit. */
export interface DeorbitReview {
  readonly start_s: number;
  readonly end_s: number;
  readonly deltaV_m_s: Figure;
  readonly periapsisBefore_m: Figure;
  readonly periapsisAfter_m: Figure;
  /** Metres of periapsis for each m/s spent. */
  readonly perDeltaV_m_per_m_s: Figure;
  /** One impulse at apoapsis to the same periapsis, m/s. */
  readonly optimum_m_s: Figure;
}

/** Where the state after the last burn leads, by the equations of motion with drag, against where it came down. */
export interface ImpactReview {
  /** Time of the state that it starts from. */
  readonly from_s: number;
  /** What ends the comparison: up to there nothing but gravity and drag of the bare body acts. */
  readonly until: 'ground' | 'parachute-open' | 'burn' | 'end of the log';
  readonly altitude_m: number;
  readonly drag: 'identified' | 'card' | 'none';
  readonly predicted: {
    readonly time_s: Figure;
    readonly latitude_deg: Figure;
    readonly longitude_deg: Figure;
  };
  readonly logged: {
    readonly time_s: number;
    readonly latitude_deg: number | null;
    readonly longitude_deg: number | null;
  };
  /** Logged less predicted: later is positive. */
  readonly missTime_s: Figure;
  /** Over the ground between the two points; unavailable without logged positions. */
  readonly missDistance_m: Figure;
}

/** Entry into the air. */
export interface EntryReview {
  readonly start_s: number;
  readonly end_s: number;
  readonly speed_m_s: Figure;
  /** Of the path under the horizontal. */
  readonly angle_deg: Figure;
  /** Drag over mass, m/s². */
  readonly peakDeceleration_m_s2: PeakFigure;
  /** What a straight path without gravity would feel at most (Allen & Eggers 1958). */
  readonly allenEggers_m_s2: Figure;
  readonly peakDynamicPressure_Pa: PeakFigure;
  /** Stagnation point by Sutton & Graves 1971; unavailable without nose radius or the gas's constant. */
  readonly peakHeatFlux_W_m2: PeakFigure;
  readonly heatLoad_J_m2: Figure;
  readonly noseRadius_m: number | null;
  /** kg^½/m; null where the world's gas is not told. */
  readonly heatingConstant: number | null;
  /** m/(Cd·A), from the deceleration. */
  readonly ballisticCoefficient_kg_m2: Figure;
  /** The same from the card's `return`. */
  readonly cardBallisticCoefficient_kg_m2: number | null;
}

/** Parachutes as the deceleration shows them. */
export interface ParachuteReview {
  readonly open_s: number;
  /** Null unless they fill. */
  readonly full_s: number | null;
  /** Whether the drag area comes up to the card's; 'untold' without the card's, or without the mass. */
  readonly inflation: 'full' | 'partial' | 'untold';
  /** True where they were out before the air could be felt; opening figures are then unavailable. */
  readonly openedBefore: boolean;
  readonly openAltitude_m: Figure;
  readonly openSpeed_m_s: Figure;
  readonly openDynamicPressure_Pa: Figure;
  readonly fullAltitude_m: Figure;
  /** Greatest drag over mass after opening, m/s². */
  readonly peakLoad_m_s2: PeakFigure;
  /** Drag area of all that brakes under the parachutes at last; needs the mass. */
  readonly dragArea_m2: Figure;
  readonly plannedOpenAltitude_m: number | null;
  readonly plannedFullAltitude_m: number | null;
}

/** The last stretch before the ground. */
export interface DescentReview {
  readonly rate_m_s: Figure;
  readonly altitude_m: number;
  /** √(2mg/(ρ·CdA)) with the card's mass and areas. */
  readonly expected_m_s: Figure;
}

/** A landing under thrust. */
export interface PoweredLandingReview {
  readonly start_s: number;
  readonly end_s: number;
  readonly startAltitude_m: number;
  readonly startSpeed_m_s: number;
  readonly deltaV_m_s: Figure;
  readonly speedLost_m_s: Figure;
  readonly gravityLoss_m_s: Figure;
  readonly hover_s: number;
  readonly hoverLoss_m_s: Figure;
}

/** What the log shows of the way back down. Parts that did not happen, or cannot be told, are null. */
export interface WayDownReview {
  readonly code: 'landed' | 'landed-hard' | 'lost' | 'not-flown' | 'not-logged';
  readonly text: string;
  readonly touchdownSpeed_m_s: Figure;
  readonly touchdown_s: number | null;
  readonly deorbit: DeorbitReview | null;
  readonly impact: ImpactReview | null;
  readonly entry: EntryReview | null;
  readonly parachute: ParachuteReview | null;
  readonly descent: DescentReview | null;
  readonly poweredLanding: PoweredLandingReview | null;
}

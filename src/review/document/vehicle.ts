import type { Figure } from './figure.ts';

/** One stage's engines as identified, the card's values beside; null = the card does not say. */
export interface VehicleStage {
  readonly name: string;
  /** Which stretch of the burn, where boosters drop and no card tells what remains; 0 otherwise. */
  readonly stretch: number;
  readonly isp_s: Figure;
  readonly exitArea_m2: Figure;
  /** In vacuum at full throttle. */
  readonly thrustVacuum_N: Figure;
  readonly card: {
    readonly isp_s: number | null;
    readonly exitArea_m2: number | null;
    readonly thrustVacuum_N: number | null;
  };
}

/** The vehicle as the log shows it (METHODS §3). A figure that only its prior fixes has the basis `assumed`. */
export interface ReviewVehicle {
  /** Whose values stand in the ledger. */
  readonly inBooks: 'card' | 'identified';
  /** Why, one sentence. */
  readonly text: string;
  readonly stages: readonly VehicleStage[];
  /** Drag coefficient × area of the stack at Mach numbers; null on a world without air or with logged drag. */
  readonly dragArea:
    | readonly { readonly mach: number; readonly dragArea_m2: Figure; readonly card_m2: number | null }[]
    | null;
  /** What the log cannot tell apart, one sentence each. */
  readonly unseparated: readonly string[];
  /** Root mean square of what the equation of motion leaves of the logged speed, m/s. */
  readonly residual_m_s: number;
}

import type { FlightEventName } from '../../flight/events.ts';
import type { FlightPhaseName } from '../../flight/phases.ts';
import type { Figure } from './figure.ts';

/** Names that others build on; the flight room finds the events and cuts the phases. */
export type EventName = FlightEventName;

export type PhaseName = FlightPhaseName;

export interface ReviewEvent {
  readonly name: EventName;
  /** From lift-off. */
  readonly time_s: number;
  readonly planned_s: number | null;
  /** Stage or part concerned, where there is one. */
  readonly subject: string | null;
  /** State at the event, null where unknown. */
  readonly altitude_m: number | null;
  readonly speed_m_s: number | null;
}

export interface ReviewBurn {
  readonly start_s: number;
  readonly end_s: number;
  readonly stage: string;
  /** True for burns of the ascent, false for later ones. */
  readonly ascent: boolean;
  readonly deltaV: Figure;
  readonly efficiency: Figure;
  readonly propellant_kg: Figure;
}

export interface OrbitFigures {
  readonly apoapsisAltitude_m: Figure;
  readonly periapsisAltitude_m: Figure;
  readonly eccentricity: Figure;
  readonly inclination_deg: Figure;
  readonly semiMajorAxis_m: Figure;
  readonly period_s: Figure;
}

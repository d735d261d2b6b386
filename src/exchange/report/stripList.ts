import type { Strip, StripName, Strips } from '../../review/types.ts';

/** One line of a strip. */
export interface StripLine {
  readonly name: StripName;
  readonly label: string;
  /** CSS custom property that carries the colour. */
  readonly colour: string;
  readonly dashed: boolean;
  /** True for a line that may run out of the picture: it does not set the scale. */
  readonly guest: boolean;
}

export interface StripPlan {
  readonly title: string;
  readonly unit: string;
  /** Shown value = SI value × scale. */
  readonly scale: number;
  readonly lines: readonly StripLine[];
  readonly fromZero: boolean;
  /** Unit and scale where nothing shown reaches one of the greater unit. */
  readonly small?: { readonly unit: string; readonly scale: number };
}

function line(
  name: StripName,
  label: string,
  colour = '--ink',
  look: 'solid' | 'dashed' | 'guest' = 'solid',
): StripLine {
  return { name, label, colour, dashed: look !== 'solid', guest: look === 'guest' };
}

const plans: readonly StripPlan[] = [
  {
    title: 'Altitude and apoapsis',
    unit: 'km',
    scale: 1e-3,
    fromZero: true,
    lines: [
      line('altitude_m', 'altitude'),
      line('apoapsisAltitude_m', 'apoapsis', '--cause-speed', 'guest'),
      line('periapsisAltitude_m', 'periapsis', '--muted', 'guest'),
    ],
  },
  {
    title: 'Pitch and flight path',
    unit: '° above horizon',
    scale: 1,
    fromZero: false,
    lines: [
      line('pitch_deg', 'pitch', '--cause-steering'),
      line('flightPathAngle_deg', 'flight path', '--ink', 'dashed'),
    ],
  },
  {
    title: 'Dynamic pressure',
    unit: 'kPa',
    scale: 1e-3,
    fromZero: true,
    lines: [line('dynamicPressure_Pa', 'dynamic pressure', '--cause-drag')],
  },
  {
    title: 'Speed',
    unit: 'm/s',
    scale: 1,
    fromZero: true,
    lines: [
      line('speed_m_s', 'over the ground', '--cause-speed'),
      line('inertialSpeed_m_s', 'inertial', '--ink', 'dashed'),
    ],
  },
  {
    title: 'Vertical speed',
    unit: 'm/s',
    scale: 1,
    fromZero: false,
    lines: [line('verticalSpeed_m_s', 'vertical speed')],
  },
  {
    title: 'Thrust-to-weight',
    unit: '',
    scale: 1,
    fromZero: true,
    lines: [line('thrustToWeight', 'thrust-to-weight')],
  },
  {
    title: 'Loss rates',
    unit: 'm/s each second',
    scale: 1,
    fromZero: false,
    lines: [
      line('gravityLossRate_m_s2', 'gravity', '--cause-gravity'),
      line('steeringLossRate_m_s2', 'steering', '--cause-steering', 'dashed'),
      line('dragLossRate_m_s2', 'drag', '--cause-drag'),
      line('backPressureLossRate_m_s2', 'back pressure', '--cause-pressure', 'dashed'),
    ],
  },
  {
    title: 'Angle of attack',
    unit: '°',
    scale: 1,
    fromZero: true,
    lines: [line('angleOfAttack_deg', 'angle of attack', '--cause-steering')],
  },
  {
    title: 'Throttle',
    unit: '%',
    scale: 100,
    fromZero: true,
    lines: [line('throttle', 'throttle')],
  },
  {
    title: 'Acceleration',
    unit: 'm/s²',
    scale: 1,
    fromZero: true,
    lines: [line('acceleration_m_s2', 'acceleration')],
  },
  {
    title: 'Mass',
    unit: 't',
    scale: 1e-3,
    small: { unit: 'kg', scale: 1 },
    fromZero: true,
    lines: [line('mass_kg', 'mass')],
  },
];

/** A strip that this flight has numbers for. */
export interface FlightStrip extends Omit<StripPlan, 'lines' | 'small'> {
  readonly lines: readonly (StripLine & { readonly strip: Strip })[];
  /** True where the title alone does not say which lines these are. */
  readonly named: boolean;
}

/** The strips of a flight, in the page's order, each with those lines that hold a number. */
export function flightStrips({ channels }: Strips): readonly FlightStrip[] {
  return plans.flatMap(({ small, ...plan }) => {
    const lines = plan.lines.flatMap((l) => {
      const strip = channels[l.name];
      // A guest that never comes above ground, or a loss that never arises, would be named and not seen.
      const seen = l.guest
        ? (v: number) => v >= 0
        : l.name.endsWith('LossRate_m_s2')
          ? (v: number) => Math.abs(v) > 1e-9
          : Number.isFinite;
      return strip === undefined || !strip.values.some((v) => seen(v)) ? [] : [{ ...l, strip }];
    });
    const large = lines.some((l) => l.strip.values.some((v) => Math.abs(v) * plan.scale >= 1));
    const units = small === undefined || large ? {} : small;
    return lines.some((l) => !l.guest) ? [{ ...plan, ...units, lines, named: plan.lines.length > 1 }] : [];
  });
}

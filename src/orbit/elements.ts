import { combine, cross, dot, type StateVector, type Vector } from './kepler.ts';

/**
 * Classical elements of a conic. Angles in radians, 0 to 2π except the inclination (0 to π) and the true anomaly
 * of an unbound conic (−π to π). Where an angle has no meaning it is 0 and the next takes its place over: on a
 * circle the true anomaly counts from the ascending node, on an equatorial conic the argument of periapsis counts
 * from the first axis, on an equatorial circle the true anomaly does.
 */
export interface OrbitalElements {
  readonly semiLatusRectum_m: number;
  readonly eccentricity: number;
  readonly inclination_rad: number;
  readonly ascendingNode_rad: number;
  readonly argumentOfPeriapsis_rad: number;
  readonly trueAnomaly_rad: number;
  /** True where periapsis is taken as undefined. */
  readonly circular: boolean;
  /** True where the node is taken as undefined. */
  readonly equatorial: boolean;
}

/** Below this an eccentricity or the sine of an inclination is rounding. */
const NEGLIGIBLE = 1e-11;

/**
 * Elements of a state. Throws nothing; a straight fall (no angular momentum) has no plane and gives NaN angles'
 * limits: semi-latus rectum 0, inclination 0.
 * Source: Vallado 2013, algorithm 9, with every angle from two components, so that none loses digits.
 */
export function elementsFromState(mu_m3_s2: number, state: StateVector): OrbitalElements {
  const { position_m: r, velocity_m_s: v } = state;
  const h = cross(r, v);
  const momentum = Math.hypot(...h);
  const radius = Math.hypot(...r);
  const semiLatusRectum_m = (momentum * momentum) / mu_m3_s2;
  const alongRadius = semiLatusRectum_m / radius - 1;
  const acrossRadius = (momentum * dot(r, v)) / (radius * mu_m3_s2);
  const eccentricity = Math.hypot(alongRadius, acrossRadius);
  const circular = eccentricity < NEGLIGIBLE;
  const level = Math.hypot(h[0], h[1]);
  const equatorial = level <= NEGLIGIBLE * momentum;
  const node: Vector = equatorial ? [1, 0, 0] : [-h[1] / level, h[0] / level, 0];
  const ahead = cross([h[0] / momentum, h[1] / momentum, h[2] / momentum], node);
  const latitude = Math.atan2(dot(r, ahead), dot(r, node));
  const anomaly = circular ? latitude : Math.atan2(acrossRadius, alongRadius);
  return {
    semiLatusRectum_m,
    eccentricity,
    inclination_rad: Math.atan2(level, h[2]),
    ascendingNode_rad: equatorial ? 0 : positive(Math.atan2(node[1], node[0])),
    argumentOfPeriapsis_rad: circular ? 0 : positive(latitude - anomaly),
    trueAnomaly_rad: eccentricity >= 1 ? anomaly : positive(anomaly),
    circular,
    equatorial,
  };
}

/** State of a set of elements, any conic. Source: Vallado 2013, algorithm 10. */
export function stateFromElements(
  mu_m3_s2: number,
  elements: Omit<OrbitalElements, 'circular' | 'equatorial'>,
): StateVector {
  const { semiLatusRectum_m: p, eccentricity: e, inclination_rad: i, trueAnomaly_rad: nu } = elements;
  const { ascendingNode_rad: node, argumentOfPeriapsis_rad: argument } = elements;
  const radius = p / (1 + e * Math.cos(nu));
  const speed = Math.sqrt(mu_m3_s2 / p);
  /** Unit vectors to periapsis and to a right angle ahead of it. */
  const toPeriapsis = inPlane(node, i, argument);
  const ahead = inPlane(node, i, argument + Math.PI / 2);
  return {
    position_m: combine(radius * Math.cos(nu), toPeriapsis, radius * Math.sin(nu), ahead),
    velocity_m_s: combine(-speed * Math.sin(nu), toPeriapsis, speed * (e + Math.cos(nu)), ahead),
  };
}

/** Semi-major axis: negative for a hyperbola, Infinity for a parabola. */
export function semiMajorAxis_m(
  elements: Pick<OrbitalElements, 'semiLatusRectum_m' | 'eccentricity'>,
): number {
  return elements.semiLatusRectum_m / ((1 - elements.eccentricity) * (1 + elements.eccentricity));
}

/**
 * Inclination of the plane of a motion whose velocity points along an inertial heading (from north through east)
 * at a geocentric latitude: cos i = cos φ sin β (spherical triangle). Radians.
 */
export function inclinationFromHeading(latitude_rad: number, heading_rad: number): number {
  // By the sine as well: near 0 and π the cosine has lost its digits.
  const equatorward = Math.cos(latitude_rad) * Math.sin(heading_rad);
  return Math.atan2(
    Math.hypot(Math.sin(latitude_rad), Math.cos(latitude_rad) * Math.cos(heading_rad)),
    equatorward,
  );
}

/** Unit vector in the orbit's plane at an angle from the node. */
function inPlane(node: number, inclination: number, angle: number): Vector {
  const x = Math.cos(angle);
  const y = Math.sin(angle);
  return [
    Math.cos(node) * x - Math.sin(node) * Math.cos(inclination) * y,
    Math.sin(node) * x + Math.cos(node) * Math.cos(inclination) * y,
    Math.sin(inclination) * y,
  ];
}

function positive(angle: number): number {
  const turned = angle % (2 * Math.PI);
  return turned < 0 ? turned + 2 * Math.PI : turned;
}

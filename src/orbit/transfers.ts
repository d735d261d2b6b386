import { goldenSection } from './goldenSection.ts';

/** Radii of an orbit's apsides; equal on a circle. */
export interface Apsides {
  readonly apoapsisRadius_m: number;
  readonly periapsisRadius_m: number;
}

/** Which apsis. */
export type Apsis = 'apoapsis' | 'periapsis';

/** A transfer of impulses along the path, each at an apsis. */
export interface Transfer {
  /** Speed changes in their order, unsigned. */
  readonly impulses_m_s: readonly number[];
  readonly deltaV_m_s: number;
  /** From the first impulse to the last. */
  readonly duration_s: number;
}

/** A transfer between coaxial orbits with the apsides where it leaves and arrives. */
export interface ApsidalTransfer extends Transfer {
  readonly from: Apsis;
  readonly to: Apsis;
}

/** Speed on a circle. Radius in m, m/s. */
export function circularSpeed(mu_m3_s2: number, radius_m: number): number {
  return Math.sqrt(mu_m3_s2 / radius_m);
}

/**
 * Speed at the apsis `at` of the conic whose other apsis is `other` (Infinity for a parabola), from the
 * vis-viva integral: v² = 2μ·other/(at·(at + other)). Any consistent units.
 */
export function speedAtApsis(mu: number, at: number, other: number): number {
  return Math.sqrt((2 * mu) / (at * (1 + at / other)));
}

/** Half the period of the ellipse with these apsides. */
function halfPeriod(mu: number, one: number, other: number): number {
  return Math.PI * Math.sqrt((0.5 * (one + other)) ** 3 / mu);
}

/**
 * Hohmann transfers between two coaxial orbits in one plane, one for each pairing of apsides, cheapest first.
 * Between circles all four are the same. Source: Vallado 2013, algorithm 36; Curtis, §6.3 (ellipses).
 */
export function hohmannTransfers(mu_m3_s2: number, start: Apsides, goal: Apsides): ApsidalTransfer[] {
  const both: readonly Apsis[] = ['periapsis', 'apoapsis'];
  const transfers = both.flatMap((from) =>
    both.map((to): ApsidalTransfer => {
      const [leave, leaveOther] = apsisPair(start, from);
      const [arrive, arriveOther] = apsisPair(goal, to);
      const first = Math.abs(
        speedAtApsis(mu_m3_s2, leave, arrive) - speedAtApsis(mu_m3_s2, leave, leaveOther),
      );
      const second = Math.abs(
        speedAtApsis(mu_m3_s2, arrive, arriveOther) - speedAtApsis(mu_m3_s2, arrive, leave),
      );
      return {
        from,
        to,
        impulses_m_s: [first, second],
        deltaV_m_s: first + second,
        duration_s: halfPeriod(mu_m3_s2, leave, arrive),
      };
    }),
  );
  return transfers.sort((a, b) => a.deltaV_m_s - b.deltaV_m_s);
}

/** Radius of an apsis and of the other one. */
function apsisPair(orbit: Apsides, apsis: Apsis): readonly [number, number] {
  const { apoapsisRadius_m: high, periapsisRadius_m: low } = orbit;
  return apsis === 'apoapsis' ? [high, low] : [low, high];
}

/**
 * Bi-elliptic transfer between circles by way of a third radius. Source: Vallado 2013, algorithm 37.
 */
export function biEllipticTransfer(
  mu_m3_s2: number,
  startRadius_m: number,
  turningRadius_m: number,
  goalRadius_m: number,
): Transfer {
  const first = Math.abs(
    speedAtApsis(mu_m3_s2, startRadius_m, turningRadius_m) - circularSpeed(mu_m3_s2, startRadius_m),
  );
  const second = Math.abs(
    speedAtApsis(mu_m3_s2, turningRadius_m, goalRadius_m) -
      speedAtApsis(mu_m3_s2, turningRadius_m, startRadius_m),
  );
  const third = Math.abs(
    circularSpeed(mu_m3_s2, goalRadius_m) - speedAtApsis(mu_m3_s2, goalRadius_m, turningRadius_m),
  );
  return {
    impulses_m_s: [first, second, third],
    deltaV_m_s: first + second + third,
    duration_s:
      halfPeriod(mu_m3_s2, startRadius_m, turningRadius_m) +
      halfPeriod(mu_m3_s2, turningRadius_m, goalRadius_m),
  };
}

/**
 * Impulse from one speed to another with an angle between the two: the cosine rule, in a form that keeps its
 * digits for small angles. Plane change with change of speed (Vallado 2013, §6.5).
 */
export function combinedChange_m_s(before_m_s: number, after_m_s: number, angle_rad: number): number {
  const half = Math.sin(0.5 * angle_rad);
  return Math.hypot(after_m_s - before_m_s, 2 * Math.sqrt(before_m_s * after_m_s) * half);
}

/** Impulse that turns a plane by an angle and changes nothing else: 2 v cos γ sin(Δ/2) (Vallado 2013, eq. 6-19). */
export function planeChange_m_s(speed_m_s: number, angle_rad: number, flightPathAngle_rad = 0): number {
  return 2 * speed_m_s * Math.cos(flightPathAngle_rad) * Math.abs(Math.sin(0.5 * angle_rad));
}

/** A Hohmann transfer between circles whose planes differ. */
export interface PlaneChangingTransfer extends Transfer {
  /** Part of the plane change that the first impulse makes. */
  readonly firstAngle_rad: number;
}

/**
 * Hohmann transfer between circles in planes an angle apart, `firstAngle_rad` of it turned at the start; left out,
 * the split that costs least.
 */
export function planeChangingTransfer(
  mu_m3_s2: number,
  startRadius_m: number,
  goalRadius_m: number,
  angle_rad: number,
  firstAngle_rad?: number,
): PlaneChangingTransfer {
  const start = circularSpeed(mu_m3_s2, startRadius_m);
  const leave = speedAtApsis(mu_m3_s2, startRadius_m, goalRadius_m);
  const arrive = speedAtApsis(mu_m3_s2, goalRadius_m, startRadius_m);
  const goal = circularSpeed(mu_m3_s2, goalRadius_m);
  const impulses = (turned: number): readonly [number, number] => [
    combinedChange_m_s(start, leave, turned),
    combinedChange_m_s(arrive, goal, angle_rad - turned),
  ];
  const total = (turned: number): number => impulses(turned)[0] + impulses(turned)[1];
  const turned = firstAngle_rad ?? goldenSection(total, 0, angle_rad, 1e-9);
  return {
    firstAngle_rad: turned,
    impulses_m_s: impulses(turned),
    deltaV_m_s: total(turned),
    duration_s: halfPeriod(mu_m3_s2, startRadius_m, goalRadius_m),
  };
}

import { goldenSection } from './goldenSection.ts';
import { type Apsides, type Apsis, combinedChange_m_s, speedAtApsis, type Transfer } from './transfers.ts';

/** The cheapest change of an orbit's shape and plane by impulses at its apsides. */
export interface ApsidalChange extends Transfer {
  /** Where on the first orbit the first impulse is made. */
  readonly from: Apsis;
  readonly to: Apsis;
  /** Share of the plane's turn that the first impulse makes, rad. */
  readonly firstAngle_rad: number;
}

/**
 * Least impulsive delta-v from one orbit to another whose line of apsides and nodes are free, the planes an angle
 * apart: one impulse at an apsis, half a turn, one at the other end, the turn split between them as costs least.
 * With the same plane these are the transfers of Hohmann; an impulse that is not needed is zero.
 * Source: Vallado 2013, §6.3 and §6.5.
 */
export function leastApsidalChange(
  mu_m3_s2: number,
  start: Apsides,
  goal: Apsides,
  angle_rad = 0,
): ApsidalChange {
  const ends: readonly Apsis[] = ['periapsis', 'apoapsis'];
  let best: ApsidalChange | null = null;
  for (const from of ends)
    for (const to of ends) {
      const way = change(mu_m3_s2, start, goal, from, to, angle_rad);
      // Between circles all ways are one: the first stays unless another is really cheaper.
      if (best === null || way.deltaV_m_s < best.deltaV_m_s - 1e-6) best = way;
    }
  return best!;
}

function change(
  mu: number,
  start: Apsides,
  goal: Apsides,
  from: Apsis,
  to: Apsis,
  angle_rad: number,
): ApsidalChange {
  const [leave, leaveOther] = pair(start, from);
  const [arrive, arriveOther] = pair(goal, to);
  const speeds = [
    speedAtApsis(mu, leave, leaveOther),
    speedAtApsis(mu, leave, arrive),
    speedAtApsis(mu, arrive, leave),
    speedAtApsis(mu, arrive, arriveOther),
  ] as const;
  const impulses = (turned: number): readonly [number, number] => [
    combinedChange_m_s(speeds[0], speeds[1], turned),
    combinedChange_m_s(speeds[2], speeds[3], angle_rad - turned),
  ];
  const total = (turned: number): number => impulses(turned)[0] + impulses(turned)[1];
  let turned = 0;
  if (angle_rad > 0) {
    // The ends are tried by themselves: a golden section only comes near them.
    turned = goldenSection(total, 0, angle_rad, 1e-9);
    for (const end of [0, angle_rad]) if (total(end) <= total(turned)) turned = end;
  }
  return {
    from,
    to,
    firstAngle_rad: turned,
    impulses_m_s: impulses(turned),
    deltaV_m_s: total(turned),
    duration_s: Math.PI * Math.sqrt((0.5 * (leave + arrive)) ** 3 / mu),
  };
}

function pair(orbit: Apsides, apsis: Apsis): readonly [number, number] {
  const { apoapsisRadius_m: high, periapsisRadius_m: low } = orbit;
  return apsis === 'apoapsis' ? [high, low] : [low, high];
}

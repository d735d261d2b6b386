import { orbitFromPlanarState } from '../../orbit/planar.ts';
import type { Analysis } from '../../review/types.ts';
import type { ShownIn } from '../../units/unitSets.ts';
import { readingText } from '../readingText.ts';
import { indexAt } from '../sampleAt.ts';
import { type Drawing, draw, picture, px } from './drawing.ts';

/** A conic in the plane of the picture: x to the right, y up, from the world's centre, m. */
interface Conic {
  readonly semiLatusRectum_m: number;
  readonly eccentricity: number;
  /** Direction of periapsis, rad from the x axis, anticlockwise. */
  readonly periapsis_rad: number;
}

export interface OrbitView {
  readonly radius_m: number;
  readonly airTop_m: number | null;
  /** Flown arc from lift-off to the end of the ascent. */
  readonly flown: readonly (readonly [number, number])[];
  readonly achieved: Conic;
  /** The target orbit laid with its apsides along the achieved ones; null for a target that is no orbit. */
  readonly target: Conic | null;
  /** Half the side of the picture, m. */
  readonly reach_m: number;
}

const points = 360;

/**
 * The orbit at the end of the ascent in its own plane, seen so that lift-off is on top and the flight goes to the
 * right. Null where the state there is not known.
 */
export function orbitView({ review, strips }: Analysis): OrbitView | null {
  const { gravitationalParameter_m3_s2: mu, radius_m, radiusAtSite_m } = review.mission.constants;
  // Air thins out without an end; what stands in an orbit's way is the air under the orbit floor.
  const { airTop_m: top_m } = review.mission.constants;
  const airTop_m = top_m === null ? null : Math.min(top_m, review.mission.orbitFloor_m || top_m);
  const { altitude_m, inertialSpeed_m_s, verticalSpeed_m_s } = strips.channels;
  if (altitude_m === undefined || inertialSpeed_m_s === undefined || verticalSpeed_m_s === undefined)
    return null;
  const { time_s } = strips;
  const end = Math.max(1, indexAt(time_s, review.orbit.cutoff_s ?? review.ledger.end_s));
  const first = Math.max(0, indexAt(time_s, Math.max(0, review.ledger.start_s)));
  const stride = Math.max(1, Math.floor((end - first) / points));
  const flown: [number, number][] = [];
  // In its plane the flight turns about the centre at the inertial horizontal speed over the radius.
  let turned = 0;
  let before: { t: number; rate: number } | null = null;
  let state: { r: number; up: number; along: number } | null = null;
  for (let i = first; i <= end; i++) {
    const t = time_s[i]!;
    const r = radiusAtSite_m + altitude_m.values[i]!;
    const up = verticalSpeed_m_s.values[i]!;
    const along = Math.sqrt(Math.max(0, inertialSpeed_m_s.values[i]! ** 2 - up * up));
    if (Number.isNaN(r + up + along)) continue;
    const rate = along / r;
    if (before !== null) turned += ((rate + before.rate) / 2) * (t - before.t);
    before = { t, rate };
    state = { r, up, along };
    if ((i - first) % stride === 0 || i === end) flown.push(place(r, Math.PI / 2 - turned));
  }
  if (state === null || state.along === 0) return null;
  const conic = orbitFromPlanarState(mu, state.r, state.up, state.along);
  const p = (state.r * state.along) ** 2 / mu;
  const anomaly = Math.atan2((state.up * state.r * state.along) / mu, p / state.r - 1);
  // Motion is clockwise in the picture: the true anomaly is counted against the drawn angle.
  const achieved = {
    semiLatusRectum_m: p,
    eccentricity: conic.eccentricity,
    periapsis_rad: Math.PI / 2 - turned + anomaly,
  };
  const wanted = review.mission.targetOrbit;
  const apses = wanted && {
    high: radius_m + wanted.apoapsisAltitude_m,
    low: radius_m + wanted.periapsisAltitude_m,
  };
  const target = apses && {
    semiLatusRectum_m: (2 * apses.high * apses.low) / (apses.high + apses.low),
    eccentricity: (apses.high - apses.low) / (apses.high + apses.low),
    periapsis_rad: achieved.periapsis_rad,
  };
  const far = achieved.eccentricity < 1 ? p / (1 - achieved.eccentricity) : 3 * state.r;
  const reach_m = 1.06 * Math.max(radius_m + (airTop_m ?? 0), apses?.high ?? 0, Math.min(far, 8 * radius_m));
  return { radius_m, airTop_m, flown, achieved, target, reach_m };
}

function place(radius: number, angle: number): [number, number] {
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

/** Points of a conic from one true anomaly to another, those beyond `reach` left out. */
function conicPoints(conic: Conic, reach_m: number): [number, number][] {
  return Array.from({ length: points + 1 }, (_, i) => (2 * Math.PI * i) / points - Math.PI).flatMap((nu) => {
    const across = 1 + conic.eccentricity * Math.cos(nu);
    const r = conic.semiLatusRectum_m / across;
    return across <= 0.01 || r > 2 * reach_m ? [] : [place(r, conic.periapsis_rad - nu)];
  });
}

/**
 * Surface, air, target and achieved orbit to one scale in both directions.
 * @param altitude how altitudes are spoken of
 */
export function orbitChart(
  view: OrbitView,
  size: number,
  id: string,
  altitude: ShownIn = { unit: 'km', scale: 1e-3 },
): Drawing {
  const half = size / 2;
  const scale = half / view.reach_m;
  const line = (list: readonly (readonly [number, number])[]) =>
    list.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(half + x * scale)} ${px(half - y * scale)}`).join('');
  const ring = (radius_m: number, look: Record<string, string | number>) =>
    draw('circle', { cx: half, cy: half, r: radius_m * scale, ...look });
  const achieved = line(conicPoints(view.achieved, view.reach_m));
  const [atEnd] = view.flown.slice(-1);
  const [lift] = view.flown;
  const orbitLine = { fill: 'none', stroke: 'var(--reached)', 'stroke-width': 2 };
  return picture(
    size,
    size,
    orbitSentence(view, altitude),
    draw(
      'defs',
      {},
      draw(
        'clipPath',
        { id: `${id}-sky` },
        draw('path', {
          d: `M0 0H${size}V${size}H0ZM${px(half - view.radius_m * scale)} ${half}a${px(view.radius_m * scale)} ${px(view.radius_m * scale)} 0 1 0 ${px(2 * view.radius_m * scale)} 0a${px(view.radius_m * scale)} ${px(view.radius_m * scale)} 0 1 0 ${px(-2 * view.radius_m * scale)} 0Z`,
          'clip-rule': 'evenodd',
        }),
      ),
    ),
    view.airTop_m === null ? null : ring(view.radius_m + view.airTop_m, { fill: 'var(--air)' }),
    ring(view.radius_m, { fill: 'var(--ground-disc)', stroke: 'var(--edge)', 'stroke-width': 1 }),
    view.target === null
      ? null
      : draw('path', {
          d: line(conicPoints(view.target, view.reach_m)),
          fill: 'none',
          stroke: 'var(--muted)',
          'stroke-width': 1.5,
          'stroke-dasharray': '5 4',
        }),
    draw('path', { ...orbitLine, 'stroke-width': 1.25, 'stroke-dasharray': '2 4', d: achieved }),
    draw('path', { ...orbitLine, 'clip-path': `url(#${id}-sky)`, d: achieved }),
    draw('path', {
      d: line(view.flown),
      fill: 'none',
      stroke: 'var(--ink)',
      'stroke-width': 3,
      'stroke-linecap': 'round',
    }),
    lift === undefined ? null : dot(lift, half, scale, 'var(--ink)'),
    atEnd === undefined ? null : dot(atEnd, half, scale, 'var(--sheet)'),
  );
}

function dot([x, y]: readonly [number, number], half: number, scale: number, fill: string): Drawing {
  return draw('circle', {
    cx: px(half + x * scale),
    cy: px(half - y * scale),
    r: 3.5,
    fill,
    stroke: 'var(--ink)',
    'stroke-width': 1.5,
  });
}

function orbitSentence({ achieved, radius_m, target }: OrbitView, { unit, scale }: ShownIn): string {
  const { semiLatusRectum_m: p, eccentricity: e } = achieved;
  const low = (p / (1 + e) - radius_m) * scale;
  const high = e < 1 ? (p / (1 - e) - radius_m) * scale : null;
  const reached = `The conic at the end of the ascent, to scale: periapsis ${readingText(low)} ${unit}, ${high === null ? 'open' : `apoapsis ${readingText(high)} ${unit}`}`;
  const below = low < 0 ? ', part of it under the surface' : '';
  return `${reached}${below}${target === null ? '' : ', beside the target orbit'}`;
}

import { expect, test } from 'vitest';
import { withGroundSpeed } from '../../src/flight/groundSpeed.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';

const MU = 3.986004418e14;
const RADIUS = 6378137;
const DAY = 86164.0905;

type Vector = readonly [number, number, number];

const plus = (a: Vector, p: number, b: Vector, q: number): Vector => [
  a[0] * p + b[0] * q,
  a[1] * p + b[1] * q,
  a[2] * p + b[2] * q,
];

/** Horizontal and vertical speed over the ground at a time, m/s. */
type Course = (t: number) => { readonly across: number; readonly up: number };

/** A flight along a great circle, its inertial speed by vector addition of the turning ground. */
async function flown(
  latitude_deg: number,
  azimuth_deg: number,
  period_s: number,
  course: Course,
  end_s: number,
) {
  const rad = Math.PI / 180;
  const [sin, cos] = [Math.sin(latitude_deg * rad), Math.cos(latitude_deg * rad)];
  const start: Vector = [cos, 0, sin];
  const toward: Vector = plus(
    [0, 1, 0],
    Math.sin(azimuth_deg * rad),
    [-sin, 0, cos],
    Math.cos(azimuth_deg * rad),
  );
  const spin = (2 * Math.PI) / period_s;
  const lines = ['time_s,altitude_m,inertial_speed_m_s'];
  const speeds: number[] = [];
  const fine = 200;
  let height = 0;
  let arc = 0;
  for (let k = 0; k <= end_s * 10; k++) {
    const t = k / 10 - 5;
    const { across, up } = t < 0 ? { across: 0, up: 0 } : course(t);
    const r = RADIUS + height;
    const here = plus(start, Math.cos(arc), toward, Math.sin(arc));
    const along = plus(start, -Math.sin(arc), toward, Math.cos(arc));
    const own = plus(along, across, here, up);
    const whole: Vector = [own[0] - spin * r * here[1], own[1] + spin * r * here[0], own[2]];
    lines.push(`${t + 5},${height},${Math.hypot(...whole)}`);
    speeds.push(Math.hypot(across, up));
    for (let j = 0; j < fine; j++) {
      const at = t + (j + 0.5) / (10 * fine);
      if (at < 0) continue;
      const { across: u, up: w } = course(at);
      height += w / (10 * fine);
      arc += u / (RADIUS + height) / (10 * fine);
    }
  }
  const card = {
    world: {
      name: 'Turning',
      gravitationalParameter_m3_s2: MU,
      radius_m: RADIUS,
      rotationPeriod_s: period_s,
      atmosphere: null,
    },
    site: { latitude_deg, longitude_deg: 0, altitude_m: 0, launchAzimuth_deg: azimuth_deg },
  };
  const mission = readMission({ card: { name: 'card', text: JSON.stringify(card) } });
  const log = await readLog(new TextEncoder().encode(`${lines.join('\n')}\n`), { name: 'flight' });
  const found = withGroundSpeed(log, mission)?.log.channels.speed;
  let worst = 0;
  for (let i = 0; i < speeds.length; i++) worst = Math.max(worst, Math.abs(found![i]! - speeds[i]!));
  return worst;
}

/** Straight up for 10 s, then leaning over to an orbit's speed. */
const ascent: Course = (t) => ({
  across: t < 10 ? 0 : 0.02 * (t - 10) ** 2 + 0.00008 * (t - 10) ** 3,
  up: 15 * t * Math.exp(-t / 60),
});

/** A throw over 400 s, up and down again, the speed over the ground rising to `most` and falling to nothing. */
const hop =
  (most: number): Course =>
  (t) =>
    t > 400
      ? { across: 0, up: 0 }
      : { across: most * Math.sin((Math.PI * t) / 400) ** 2, up: 600 * Math.sin((2 * Math.PI * t) / 400) };

test.each([
  ['due west from the equator', 0, 270, DAY, ascent, 300],
  ['to a sun-synchronous orbit', 34.6, 193, DAY, ascent, 300],
  ['to the north-west', -31, 320, DAY, ascent, 300],
  ['due east on a world that turns westward', 10, 90, -DAY, ascent, 300],
  ['due east, with the spin', 28.5, 90, DAY, ascent, 300],
  ['a throw to the west, slower than the ground there', 45, 270, DAY, hop(250), 420],
  ['a throw to the west, faster than the ground there', 45, 270, DAY, hop(500), 420],
  ['a throw to the west, faster than twice the ground', 45, 270, DAY, hop(1500), 420],
] as const)(
  '%s: the speed over the ground from the inertial one',
  async (_, latitude, azimuth, day, course, end) => {
    // What the altitude's rate costs is under 1 m/s; the other reading would be up to twice the ground's speed off.
    expect(await flown(latitude, azimuth, day, course, end)).toBeLessThan(3);
  },
);

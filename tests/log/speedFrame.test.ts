import { describe, expect, test } from 'vitest';
import { speedFrame } from '../../src/log/speedFrame.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const of = (pick: (x: (typeof ascent)[0]) => number, from = 0): Float64Array =>
  Float64Array.from(ascent.slice(from), pick);

describe('speedFrame', () => {
  test('at rest on the pad: over the ground', () => {
    expect(
      speedFrame(
        of((x) => x.time_s),
        of((x) => x.altitude_m),
        of((x) => x.speed_m_s),
      )?.frame,
    ).toBe('ground');
  });

  test('hundreds of m/s on the pad: inertial', () => {
    const inertial = of((x) => Math.hypot(x.verticalSpeed_m_s, x.horizontalSpeed_m_s + 409));
    expect(
      speedFrame(
        of((x) => x.time_s),
        of((x) => x.altitude_m),
        inertial,
      )?.frame,
    ).toBe('inertial');
  });

  test('a log that starts in flight tells nothing', () => {
    const late = (pick: (x: (typeof ascent)[0]) => number): Float64Array => of(pick, 60);
    expect(
      speedFrame(
        late((x) => x.time_s),
        late((x) => x.altitude_m),
        late((x) => x.speed_m_s),
      ),
    ).toBeNull();
  });
});

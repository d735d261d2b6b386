import { expect, test } from 'vitest';
import { Ascent } from '../../src/refly/ascent.ts';
import { classicAscent } from '../../src/refly/classicAscent.ts';
import { SteadyRecorder } from '../../src/refly/recorder.ts';
import { padStart, rocketWith, stageOf, worldOf } from './rockets.ts';

test('rises straight up, kicks, follows its path, and steers the last stage by linear tangent', () => {
  const ascent = new Ascent(worldOf(0), rocketWith([stageOf({ thrustVacuum_N: 300000 }), stageOf()]));
  const recorder = new SteadyRecorder(
    ['time_s', 'speed_m_s', 'pitch_rad', 'flightPathAngle_rad', 'stage'],
    0.5,
  );
  const result = ascent.fly(
    classicAscent({
      start: padStart(),
      heading_rad: Math.PI / 2,
      stages: 2,
      kickSpeed_m_s: 50,
      kick_rad: 0.2,
      kickRate_rad_s: 0.05,
      a: 0.5,
      b: 0.002,
      separationDelay_s: 1,
      ignitionDelay_s: 2,
      cutoff: { kind: 'duration', duration_s: 30 },
    }),
    recorder,
  );
  expect(result.end).toBe('flown');
  const { speed_m_s, pitch_rad, flightPathAngle_rad, stage } = recorder.columns();
  const pastKick = flightPathAngle_rad.findIndex((v) => v < Math.PI / 2 - 0.201);
  const secondLit = stage.indexOf(1) + 4;
  for (let i = 0; i < stage.length; i++) {
    if (speed_m_s[i]! < 49.9) expect(pitch_rad[i]).toBe(Math.PI / 2);
    else if (pastKick < i && stage[i] === 0) expect(pitch_rad[i]).toBeCloseTo(flightPathAngle_rad[i]!, 9);
  }
  expect(Math.tan(pitch_rad[secondLit]!)).toBeCloseTo(0.5, 2);
  expect(Math.tan(pitch_rad.at(-1)!)).toBeCloseTo(0.5 - 0.002 * 30, 6);
});

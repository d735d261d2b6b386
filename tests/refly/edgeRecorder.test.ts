import { describe, expect, test } from 'vitest';
import { Ascent } from '../../src/refly/ascent.ts';
import { held, timeTable } from '../../src/refly/controls.ts';
import { EdgeRecorder } from '../../src/refly/edgeRecorder.ts';
import { padStart, rocketWith, stageOf, worldOf } from './rockets.ts';

describe('EdgeRecorder', () => {
  const recorder = new EdgeRecorder(['time_s', 'throttle', 'mass_kg'], 1);
  new Ascent(worldOf(0), rocketWith([stageOf(), stageOf()])).fly(
    {
      start: padStart(),
      controls: {
        throttle: timeTable([0, 3.5, 3.5, 9], [1, 1, 0.9, 0.9]),
        pitch: held(1.5),
        heading: held(1),
      },
      steps: [
        { do: 'burn', until: { kind: 'duration', duration_s: 6.25 } },
        { do: 'coast', until: { kind: 'duration', duration_s: 1 } },
        { do: 'separate' },
        { do: 'coast', until: { kind: 'duration', duration_s: 1 } },
      ],
    },
    recorder,
  );
  const { time_s, throttle, mass_kg } = recorder.columns();
  const at = (t: number) => [...time_s.keys()].filter((i) => Math.abs(time_s[i]! - t) < 1e-9);

  test('holds both sides of a step of the program, a cutoff and a separation', () => {
    expect(at(3.5).map((i) => throttle[i]!)).toEqual([1, 0.9]);
    expect(at(6.25).map((i) => throttle[i]!)).toEqual([0.9, 0]);
    const [before = 0, after = 0] = at(7.25).map((i) => mass_kg[i]!);
    expect(before - after).toBeGreaterThan(1000);
  });

  test('never goes back in time, and has every full second', () => {
    for (let i = 1; i < time_s.length; i++) expect(time_s[i]!).toBeGreaterThanOrEqual(time_s[i - 1]!);
    for (let t = 0; t <= 8; t++) expect(at(t).length).toBeGreaterThan(0);
  });
});

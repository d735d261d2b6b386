import { expect, test } from 'vitest';
import { Ascent } from '../../src/refly/ascent.ts';
import { held } from '../../src/refly/controls.ts';
import { PeakRecorder } from '../../src/refly/peakRecorder.ts';
import { SteadyRecorder } from '../../src/refly/recorder.ts';
import { airTo, padStart, rocketWith, stageOf, worldOf } from './rockets.ts';

test('finds the top of the dynamic pressure between samples, flight after flight', () => {
  const ascent = new Ascent(worldOf(0, airTo(120000)), rocketWith([stageOf({ thrustVacuum_N: 250000 })]));
  const program = {
    start: padStart(),
    controls: { throttle: held(1), pitch: held(Math.PI / 2), heading: held(0) },
    steps: [{ do: 'burn' as const, until: { kind: 'empty' as const } }],
  };
  const fine = new SteadyRecorder(['dynamicPressure_Pa'], 0.01);
  ascent.fly(program, fine);
  const top = Math.max(...fine.columns().dynamicPressure_Pa);
  const peak = new PeakRecorder();
  for (let k = 0; k < 2; k++) {
    peak.reset();
    ascent.fly(program, peak);
    // Measured: 5e-6 of it, from samples a second apart.
    expect(Math.abs(peak.dynamicPressure_Pa / top - 1)).toBeLessThan(2e-5);
  }
});

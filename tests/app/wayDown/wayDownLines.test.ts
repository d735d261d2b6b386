import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { entryCurves } from '../../../src/app/wayDown/entryCurves.ts';
import { wayDownSections } from '../../../src/app/wayDown/wayDownLines.ts';
import { reviewFlight } from '../../../src/review/reviewFlight.ts';

function sample(id: string, ending: string) {
  return reviewFlight({
    log: { name: `${id}.${ending}`, bytes: readFileSync(`sample-logs/${id}.${ending}`) },
    card: {
      name: `${id}.mission.json`,
      text: readFileSync(`sample-logs/${id}.mission.json`, 'utf8'),
    },
  });
}

test('a whole mission has all parts of the way down; its curves fall from the entry', async () => {
  const analysis = await sample('homeward-tansy-1', 'csv');
  const sections = wayDownSections(analysis.review.return);
  expect(sections.map((s) => s.title)).toEqual([
    'Deorbit burn',
    'Fall predicted and logged',
    'Entry',
    'Parachutes',
    'Landing',
  ]);
  const curves = entryCurves(analysis);
  const { altitude_m = [], speed_m_s = [] } = curves ?? {};
  expect(altitude_m).toEqual([...altitude_m].sort((a, b) => a - b));
  // The speed at the top is the speed at entry; at the foot it is that of the touchdown.
  const { entry, touchdownSpeed_m_s } = analysis.review.return;
  expect(speed_m_s.at(-1)).toBeCloseTo(entry?.speed_m_s.value ?? 0, -1);
  expect(speed_m_s[0]).toBeCloseTo(touchdownSpeed_m_s.value ?? 0, 0);
});

test('a flight that never came down has none', async () => {
  const analysis = await sample('bobstay-medlar-4', 'csv');
  expect(wayDownSections(analysis.review.return)).toEqual([]);
  expect(entryCurves(analysis)).toBeNull();
});

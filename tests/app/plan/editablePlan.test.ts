import { expect, test } from 'vitest';
import { editableFile } from '../../../src/app/plan/editablePlan.ts';
import { mostRows, planFileName } from '../../../src/app/plan/planFile.ts';
import { LossbookError } from '../../../src/errors.ts';
import { readMission } from '../../../src/mission/readCard.ts';
import { readPlan } from '../../../src/plan/readPlan.ts';
import { flyPlan } from '../../../src/refly/flyPlan.ts';
import { cutLog, readCardText, referenceNames } from '../../referenceFlights.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

test.each(referenceNames)(
  '%s becomes a table that can be edited and ends where the flight does',
  async (name) => {
    const card = { name: 'card', text: readCardText(name) };
    const mission = readMission({ card });
    const { plan, notes } = await editableFile(bytes(cutLog(name)), `${name}.csv`, card);
    expect(plan.name).toBe(`${name}.plan.csv`);
    expect(plan.text.trimEnd().split('\r\n').length - 1).toBeLessThanOrEqual(mostRows);
    expect(notes.join(' ')).toMatch(/^Of [\d,]+ rows \d+ stand here: .* within 0\.05° and 0\.3 % throttle\./);
    const toGo = async (text: string) => {
      const { budget } = flyPlan(await readPlan(text, 'x.csv', mission), mission, null);
      return budget.toGo?.[budget.atEnd] ?? Number.NaN;
    };
    // Flown by the same rocket: measured 0.05 to 1.4 m/s apart.
    expect(Math.abs((await toGo(plan.text)) - (await toGo(cutLog(name))))).toBeLessThan(2);
  },
);

test('a short table stays as it is, to the digit', async () => {
  const text = 'altitude_m,pitch_deg,event\r\n0,90,\r\n1234.5678,81.234567,pitch-over\r\n';
  const { plan, notes } = await editableFile(bytes(text), 'x.csv', null);
  expect(plan.text).toBe(text);
  expect(notes).toEqual(['The plan has no throttle: it is flown at full thrust.']);
});

test('a broken file is refused in the catalogue’s words', async () => {
  await expect(editableFile(bytes('time_s,pitch_deg\n0,90\n9,80\n5,70\n'), 'x', null)).rejects.toThrow(
    LossbookError,
  );
});

test.each([
  ['a.csv', 'a.plan.csv'],
  ['a.plan.json', 'a.plan.csv'],
  ['a.b.csv.gz', 'a.b.plan.csv'],
  ['a', 'a.plan.csv'],
])('%s is kept as %s', (name, plan) => {
  expect(planFileName(name)).toBe(plan);
});

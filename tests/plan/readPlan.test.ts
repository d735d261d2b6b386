import { describe, expect, test } from 'vitest';
import { LossbookError, type MessageCode } from '../../src/errors.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { cellTable } from '../../src/plan/cellTable.ts';
import { checkPlan, readPlan } from '../../src/plan/readPlan.ts';
import { tablePlan } from '../../src/plan/tablePlan.ts';
import { cutLog, readCardText } from '../referenceFlights.ts';

const mission = readMission({ card: { name: 'card', text: readCardText('osselby-nominal') } });
const degrees = (values: Float64Array | null) => Array.from(values ?? [], (x) => (x * 180) / Math.PI);

async function refused(text: string): Promise<LossbookError> {
  try {
    await readPlan(text, 'x.plan.csv', mission);
  } catch (error) {
    if (error instanceof LossbookError) return error;
  }
  throw new Error('it was read');
}

describe('sparse tables', () => {
  test('over time, with events in a column and gaps bridged', async () => {
    const plan = await readPlan(
      'time_s,pitch_deg,throttle,event\n0,90,1,\n10,90,,pitch-over\n60,50,0.7,throttle-down\n160,,1,cutoff (lower); separation (lower)\n400,0,1,cutoff\n',
      'x.plan.csv',
      mission,
    );
    expect(plan).toMatchObject({ form: 'table', axis: 'time', assumed: [] });
    expect([...plan.axisValues]).toEqual([0, 10, 60, 160, 400]);
    // 50° at 60 s, 0° at 400 s: at 160 s on the line between.
    expect(degrees(plan.pitch_rad)[3]).toBeCloseTo(50 - (50 * 100) / 340, 9);
    expect(plan.throttle?.[1]).toBeCloseTo(1 - (0.3 * 10) / 60, 12);
    expect(plan.events.map((e) => [e.name, e.subject, e.at])).toEqual([
      ['pitch-over', null, 10],
      ['throttle-down', null, 60],
      ['cutoff', 'lower', 160],
      ['separation', 'lower', 160],
      ['cutoff', null, 400],
    ]);
  });

  test('over altitude and over speed, in the units of their headers', async () => {
    const high = await readPlan('altitude [km];pitch [deg]\n0;90\n10;70\n40;35\n', 'a.csv', mission);
    expect(high.axis).toBe('altitude');
    expect([...high.axisValues]).toEqual([0, 10_000, 40_000]);
    const fast = await readPlan(
      'speed (m/s),pitch (°),throttle (%)\n0,90,100\n50,88,100\n900,40,65\n',
      'b.csv',
      mission,
    );
    expect(fast.axis).toBe('speed');
    expect(fast.throttle?.[2]).toBeCloseTo(0.65, 12);
  });

  test('what no unit tells is read by the figures and said', async () => {
    const plan = await readPlan('time,pitch,throttle\n0,0,100\n20,5,100\n300,88,80\n', 'c.csv', mission);
    expect(degrees(plan.pitch_rad)).toEqual([90, 85, 2].map((x) => expect.closeTo(x, 9)));
    expect(plan.throttle?.[2]).toBeCloseTo(0.8, 12);
    expect(plan.assumed.join(' ')).toMatch(/degrees.*vertical.*percent/);
  });

  test('a step is two rows at one time', async () => {
    const plan = await readPlan('time_s,pitch_deg\n0,90\n100,40\n100,20\n300,0\n', 'd.csv', mission);
    expect([...plan.axisValues]).toEqual([0, 100, 100, 300]);
  });

  test('as JSON, with events in a list of their own', async () => {
    const text = JSON.stringify({
      rows: [
        { time_s: 0, pitch_deg: 90 },
        { time_s: 120, pitch_deg: 40 },
      ],
      events: [{ name: 'cutoff (upper)', time_s: 410 }],
    });
    const plan = await readPlan(text, 'e.plan.json', mission);
    expect(degrees(plan.pitch_rad)).toEqual([90, 40].map((x) => expect.closeTo(x, 9)));
    expect(plan.events).toEqual([{ name: 'cutoff', subject: 'upper', at: 410 }]);
  });
});

test('another flight is a plan by its controls and events', async () => {
  const plan = await readPlan(cutLog('osselby-nominal'), 'osselby-nominal.csv', mission);
  expect(plan.form).toBe('flight');
  expect(plan.axis).toBe('time');
  const cutoffs = plan.events.filter((e) => e.name === 'cutoff').map((e) => e.at);
  // Truth: 167.6937 and 415.3827 s.
  expect(cutoffs).toEqual([expect.closeTo(167.6937, 2), expect.closeTo(415.3827, 2)]);
  expect(degrees(plan.pitch_rad)[0]).toBeCloseTo(90, 3);
});

test('so is one whose log stands in columns of JSON', async () => {
  const [header, ...rows] = cutLog('osselby-nominal')
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));
  const byColumn = header!.map((name, k) => [name, rows.map((row) => Number(row[k]))]);
  const plan = await readPlan(JSON.stringify(Object.fromEntries(byColumn)), 'columns.json', mission);
  const fromRows = await readPlan(cutLog('osselby-nominal'), 'osselby-nominal.csv', mission);
  expect(plan.form).toBe('flight');
  expect(plan.events).toEqual(fromRows.events);
  expect(plan.pitch_rad).toEqual(fromRows.pitch_rad);
});

describe('what cannot be read is refused', () => {
  test.each<[MessageCode, string]>([
    ['plan-no-table', 'time_s\n'],
    ['plan-no-axis', 'pitch_deg,throttle\n90,1\n40,1\n'],
    ['plan-no-controls', 'time_s,altitude_m\n0,0\n10,100\n'],
    ['plan-too-short', 'time_s,pitch_deg\n0,90\n'],
    ['plan-axis-falls', 'time_s,pitch_deg\n0,90\n20,80\n10,70\n'],
    ['plan-bad-value', 'time_s,pitch_deg,throttle\n0,90,1\n10,80,-0.2\n'],
    ['plan-unknown-event', 'time_s,pitch_deg,event\n0,90,\n10,80,cutof\n'],
    ['plan-row-unplaced', 'time_s,pitch_deg\n0,90\n,80\n20,70\n'],
    ['plan-bad-value', 'time_s,pitch_deg\n0,90\n10,steep\n20,70\n'],
    ['plan-is-a-card', readCardText('osselby-nominal')],
  ])('%s', async (code, text) => {
    const error = await refused(text);
    expect(error.code).toBe(code);
    expect(error.where.file).toBe('x.plan.csv');
  });

  test('a misspelt event is suggested', async () => {
    expect((await refused('time_s,pitch_deg,event\n0,90,\n10,80,cutof\n')).message).toContain('“cutoff”');
  });
});

describe('every fault of a table is told with its row and column', () => {
  test('in the order of the rows', async () => {
    const { plan, faults } = await checkPlan(
      'altitude_m,pitch_deg,throttle,event\n0,90,1,\n,80,1,\n9000,flat,1,\n8000,60,-1,cutof\n',
      'x.plan.csv',
      mission,
    );
    expect(plan).toBeNull();
    expect(faults.map((f) => [f.code, f.where.row, f.where.column])).toEqual([
      ['plan-row-unplaced', 2, 'altitude_m'],
      ['plan-bad-value', 3, 'pitch_deg'],
      ['plan-axis-falls', 4, 'altitude_m'],
      ['plan-bad-value', 4, 'throttle'],
      ['plan-unknown-event', 4, 'event'],
    ]);
    expect(faults[2]?.message).toContain('goes back from 9000 to 8000 m');
  });

  test('of a table whose cells are apart, though no file could be so short', () => {
    const { faults } = tablePlan(
      cellTable(
        ['time_s', 'pitch_deg'],
        [
          [0, 'steep'],
          ['soon', 80],
        ],
      ),
      null,
      'x',
    );
    expect(faults.map((f) => [f.code, f.where.row])).toEqual([
      ['plan-bad-value', 1],
      ['plan-row-unplaced', 2],
    ]);
  });

  test('marks of a missing value and empty rows are none', async () => {
    const { plan } = await checkPlan('time_s,pitch_deg\n0,90\n10,-\n,\n20,n/a\n30,60\n', 'x.csv', mission);
    expect(degrees(plan?.pitch_rad ?? null)).toEqual([90, 80, 70, 60].map((x) => expect.closeTo(x, 9)));
  });
});

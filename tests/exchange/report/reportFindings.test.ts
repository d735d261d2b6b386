import { expect, test } from 'vitest';
import { drawingText } from '../../../src/exchange/report/drawing.ts';
import { findingsSection, planSections, whyNotSection } from '../../../src/exchange/report/reportFindings.ts';
import type { AgainstPlan } from '../../../src/review/types.ts';
import { unitsOf } from '../../../src/units/unitSets.ts';
import { figure, handMadeReview } from '../handMadeReview.ts';
import { elementsOf, readMarkup, textOf } from './readMarkup.ts';

const units = unitsOf('km');

const review = handMadeReview();
const compared = (planned: number, flown: number) => ({ planned, flown, difference: flown - planned });
const none = { planned: null, flown: null, difference: null };
const empty = { time_s: [], spent: [], toGo: [], projectedTotal: [], margin: [] };

const againstPlan: AgainstPlan = {
  plan: { name: 'ladder.plan.csv', form: 'table', assumed: [], text: 'the plan reaches its orbit' },
  events: [],
  cutoffs: [
    {
      subject: 'upper',
      states: {
        time_s: compared(415.4, 494.4),
        altitude_m: compared(160_000, 162_000),
        speed_m_s: compared(4182, 3842),
        inertialSpeed_m_s: none,
        flightPathAngle_deg: compared(0, -1.91),
        apoapsisAltitude_m: none,
        periapsisAltitude_m: none,
        mass_kg: none,
      },
    },
  ],
  deviations: [],
  margin: { spent: [], planned: [], flown: [], plannedTotal: [], flownTotal: [] },
  plannedCurves: empty,
  planned: { spent: null, toGo: null, projectedTotal: null, margin: null },
  avoidable: { deltaV_m_s: figure(222.6, 2), propellant_kg: figure(504, 5) },
  contributions: [
    { group: 'throttle', text: 'throttle', deltaV_m_s: figure(-20, 1), propellant_kg: figure(-40, 2) },
    {
      group: 'pitch',
      text: 'pitch of the lower stage',
      deltaV_m_s: figure(230, 2),
      propellant_kg: figure(520, 4),
    },
  ],
};

const rows = (drawing: ReturnType<typeof findingsSection>) =>
  elementsOf(readMarkup(drawing === null ? '' : drawingText(drawing)))
    .filter((e) => e.tag === 'tr')
    .map((row) => row.children.map(textOf));

test('without findings and without a plan there is nothing', () => {
  expect(findingsSection({ ...review, findings: [] }, units)).toBeNull();
  expect(planSections({ ...review, againstPlan: null }, units)).toEqual([]);
});

test('deviations stand by their cost, dearest first', () => {
  const [plan] = planSections({ ...review, againstPlan }, units);
  expect(rows(plan ?? null).slice(1)).toEqual([
    ['pitch of the lower stage', '230', '±2', '520'],
    ['throttle', '−20', '±1', '−40'],
  ]);
  expect(plan === null || plan === undefined ? '' : textOf(readMarkup(drawingText(plan)))).toContain(
    'Projected total flown less planned: 223 m/s ±2, 504 kg of propellant.',
  );
});

test('states at a cutoff: planned, flown, flown less planned; unknown ones left out', () => {
  const [, cutoffs] = planSections({ ...review, againstPlan }, units);
  expect(rows(cutoffs ?? null).slice(1)).toEqual([
    ['time', '415.4', '494.4', '+79.0', 's'],
    ['altitude', '160.0', '162.0', '+2.0', 'km'],
    ['speed', '4,182', '3,842', '−340', 'm/s'],
    ['flight-path angle', '0.00', '−1.91', '−1.91', '°'],
  ]);
});

test('what would have reached orbit is told, then the changes after the first, where it is known', () => {
  expect(whyNotSection({ ...review, whyNot: null })).toBeNull();
  const change = {
    kind: 'pitch-earlier',
    amount: 4,
    unit: 's',
    text: 'pitch over 4 s earlier',
    apoapsisAltitude_m: 161_000,
    periapsisAltitude_m: 158_000,
    nineTenthsPeriapsisAltitude_m: 90_000,
  } as const;
  const times = { latest_s: 123, outOfReach_s: 98, spentThen_m_s: 1900, wastedThen_m_s: null };
  const drawing = whyNotSection({
    ...review,
    whyNot: {
      ...times,
      changes: [change, { ...change, kind: 'less-payload', text: 'carry 40 kg less' }],
      text: 'Pitch over 4 s earlier.',
    },
  });
  expect(drawing === null ? '' : textOf(readMarkup(drawingText(drawing)))).toBe(
    'What would have reached orbitPitch over 4\u00a0s earlier.Or carry 40\u00a0kg less.',
  );
});

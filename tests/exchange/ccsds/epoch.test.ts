import { expect, test } from 'vitest';
import { epochOfTimeZero, epochText } from '../../../src/exchange/ccsds/epoch.ts';

const utc = (text: string) => Date.parse(text) / 1000;

test.each([
  ['2031-05-14T10:20:30.5Z', '2031-05-14T10:20:30.5Z', 'clock'],
  ['2031-05-14 12:20+02:00', '2031-05-14T10:20:00Z', 'clock'],
  ['2031-134T10:20:30', '2031-05-14T10:20:30Z', 'clock'],
  ['2031-05-14', '2031-05-14T00:00:00Z', 'day'],
  ['some day in May', '2000-01-01T00:00:00Z', 'made-up'],
  [null, '2000-01-01T00:00:00Z', 'made-up'],
] as const)('%s is %s (%s)', (date, instant, known) => {
  expect(epochOfTimeZero(date)).toMatchObject({ unix_s: utc(instant), known });
});

test('what is made up or taken is said', () => {
  expect(epochOfTimeZero(null).remark).toContain('the flight has no date');
  expect(epochOfTimeZero('May').remark).toContain('cannot be read as ISO 8601');
  expect(epochOfTimeZero('2031-05-14').remark).toContain('time of day is made up');
  expect(epochOfTimeZero('2031-05-14T10:20').remark).toContain('taken for UTC');
  expect(epochOfTimeZero('2031-05-14T10:20Z').remark).not.toContain('taken for UTC');
});

test('epochs keep microseconds, carry over and go back before time zero', () => {
  const zero = utc('2031-12-31T23:59:59Z') + 0.25;
  expect(epochText(zero, 0)).toBe('2031-12-31T23:59:59.250000');
  expect(epochText(zero, 0.7499996)).toBe('2032-01-01T00:00:00.000000');
  expect(epochText(zero, 0.000001)).toBe('2031-12-31T23:59:59.250001');
  expect(epochText(zero, -0.5)).toBe('2031-12-31T23:59:58.750000');
});

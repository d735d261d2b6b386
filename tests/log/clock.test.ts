import { describe, expect, test } from 'vitest';
import { readClock } from '../../src/log/clock.ts';

describe('readClock', () => {
  test.each([
    ['00:01:02', 62],
    ['1:02:03.5', 3723.5],
    ['01:02', 62],
    ['1:02.25', 62.25],
    ['1:02,25', 62.25],
    ['T+00:01:02', 62],
    ['T-00:00:10', -10],
    ['T−10', -10],
    ['L+12.5', 12.5],
    ['-0:00:03.2', -3.2],
    ['2 days 01:00:00', 176400],
    ['1:02:03:04', 93784],
    ['1h 2m 3s', 3723],
    ['90s', 90],
    ['2 min', 120],
    ['12:30:00 PM', 45000],
    ['12:30:00 AM', 1800],
    ['1:00:00 pm', 46800],
    ['23:59:59Z', 86399],
    ['04.05.2031 10:00:00', 36000],
  ])('%s is %d s', (text, seconds) => {
    expect(readClock(text)).toEqual({ seconds, kind: 'clock' });
  });

  // UNIX times by definition: days since 1970-01-01 times 86,400.
  test.each([
    ['1970-01-01T00:00:00Z', 0],
    ['2000-01-01', 946684800],
    ['2000-01-01 00:00:01.5', 946684801.5],
    ['2000-01-01T02:00:00+02:00', 946684800],
    ['1999-12-31T19:00:00-0500', 946684800],
    ['2000/1/1 00:00', 946684800],
    ['2000-060T00:00:00.000', 951696000 + 86400],
  ])('%s is the UNIX time %d', (text, seconds) => {
    expect(readClock(text)).toEqual({ seconds, kind: 'date' });
  });

  test.each(['', 'abc', '1:2:3:4:5', '12.5.3', 'x'.repeat(100), '::', 'T+'])('%j is no clock', (text) => {
    expect(readClock(text)).toBeNull();
  });
});

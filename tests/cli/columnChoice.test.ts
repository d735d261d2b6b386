import { describe, expect, test } from 'vitest';
import { columnChoice } from '../../src/cli/columnChoice.ts';

describe('CHANNEL=COLUMN[:UNIT]', () => {
  test.each([
    ['time=t', 'time', 't', null],
    ['altitude=Alt (geo):ft', 'altitude', 'Alt (geo)', 'ft'],
    ['speed=v=dx/dt:m/s', 'speed', 'v=dx/dt', 'm/s'],
    ['speed=a:b:km/h', 'speed', 'a:b', 'km/h'],
    ['speed="a:b"', 'speed', 'a:b', null],
    ['speed="a:b":km/h', 'speed', 'a:b', 'km/h'],
    [' mass =m', 'mass', 'm', null],
  ])('%s', (text, channel, column, unit) => {
    expect(columnChoice(text)).toEqual({ channel, column, unit });
  });
  test.each(['time', 'time=', '=x', ''])('%j is refused', (text) => {
    expect(() => columnChoice(text)).toThrow(/CHANNEL=COLUMN|there is no channel/);
  });
  test('an unknown channel gets a suggestion', () => {
    expect(() => columnChoice('altitud=h')).toThrow(
      /there is no channel “altitud”; did you mean “altitude”\?/,
    );
  });
});

import { describe, expect, test } from 'vitest';
import { headerParts } from '../../src/log/headerWords.ts';

describe('headerParts', () => {
  test('tries a bracketed unit, shorter and shorter tails, and no unit', () => {
    expect(headerParts('vertical_speed_m_s').at(-1)).toEqual({
      words: ['vertical', 'speed', 'm', 's'],
      unit: [],
    });
    expect(headerParts('Alt (km)')[0]).toEqual({ words: ['alt'], unit: ['km'] });
  });

  test('escapes, markup and endless headers come to nothing', () => {
    expect(headerParts('\u001b[31mspeed\u001b[0m').at(-1)?.words).toEqual(['speed']);
    expect(headerParts('<img src=x onerror=y>speed').at(-1)?.words).toEqual(['speed']);
    expect(headerParts('x'.repeat(1e6)).length).toBeLessThan(5);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { strictOem, strictOpm } from './strictReader.ts';

/** Examples of CCSDS 502.0-B (figures 5-x and 3-x), as kept in Orekit's src/test/resources/ccsds/odm. */
const example = (name: string) => readFileSync(new URL(`./examples/${name}`, import.meta.url), 'utf8');

describe('the tests’ own reading, on the standard’s examples', () => {
  test('takes the Mars Global Surveyor ephemeris whole', () => {
    const { header, blocks } = strictOem(example('oem-mars-global-surveyor.txt'));
    expect(header.ORIGINATOR).toBe('NASA/JPL');
    expect(blocks.map((b) => b.states.length)).toEqual([4, 4]);
    expect(blocks[0]?.states[3]).toEqual({
      unix_s: Date.UTC(1996, 11, 28, 21, 28, 0, 331) / 1000,
      r_km: [-3881.024, 563.959, -682.773],
      v_km_s: [-3.28827, -3.66735, 1.63861],
    });
    // A leading zero is legal.
    expect(blocks[1]?.states[0]?.r_km[1]).toBe(-63.042);
  });

  test('takes the Eutelsat W4 orbit whole', () => {
    const opm = strictOpm(example('opm-eutelsat-w4.txt'));
    expect(opm.state).toMatchObject({ X: 6655.9942, Z_DOT: -0.00101495 });
    expect(opm.elements).toMatchObject({ SEMI_MAJOR_AXIS: 41399.5123, GM: 398600.4415 });
    expect([opm.rest.MASS, opm.manoeuvres.length]).toEqual([1913, 1]);
  });

  test.each([
    ['ORIGINATOR = NASA/JPL\n', '', /ORIGINATOR is missing/],
    ['TIME_SYSTEM         = UTC\n', '', /TIME_SYSTEM is missing/],
    ['1996-12-18T12:01:00.331 2783', '1996-12-18T11:01:00.331 2783', /epochs fall/],
    ['MARS GLOBAL', 'MÁRS GLOBAL', /not printable ASCII/],
    [' 4.73372 ', ' ', /not a state/],
  ])('refuses what breaks a rule: %j', (from, to, message) => {
    expect(() => strictOem(example('oem-mars-global-surveyor.txt').replace(from, to))).toThrow(message);
  });
});

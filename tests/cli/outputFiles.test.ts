import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { checkOutputs, outputOptions, writeOutputs } from '../../src/cli/outputFiles.ts';
import { parseCommand } from '../../src/cli/parseCommand.ts';
import { reviewSix } from '../review/reviewSix.ts';

const folder = mkdtempSync(join(tmpdir(), 'lossbook-outputs-'));
const at = (name: string) => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true }));

describe('outputs', () => {
  test('each is written to its file, and nothing else', async () => {
    const options = outputOptions.flatMap((o) => [`--${o}`, at(`x.${o}`)]);
    await writeOutputs(parseCommand(['review', 'x.csv', ...options]), await reviewSix('osselby-nominal', 20));
    expect(readdirSync(folder).sort()).toEqual(['x.channels', 'x.oem', 'x.opm', 'x.parquet', 'x.report']);
    expect(readFileSync(at('x.report'), 'utf8')).toMatch(/^<!doctype html>/);
    expect(readFileSync(at('x.channels'), 'utf8')).toMatch(/^time_s,/);
    expect(readFileSync(at('x.oem'), 'utf8')).toMatch(/^CCSDS_OEM_VERS/);
    expect(readFileSync(at('x.parquet'), 'latin1')).toMatch(/^PAR1.*PAR1$/s);
    expect(readFileSync(at('x.opm'), 'utf8')).toMatch(/^CCSDS_OPM_VERS/);
  });

  test('a file that cannot be written is told', async () => {
    const asked = parseCommand(['review', 'x.csv', '--opm', at('no/such/x.opm')]);
    await expect(writeOutputs(asked, await reviewSix('osselby-nominal', 20))).rejects.toThrow(
      /x\.opm: the file cannot be written: ENOENT/,
    );
  });

  test.each([
    [['a.csv', '--report', 'a.csv'], /--report a\.csv would overwrite an input/],
    [['a.csv', '--oem', 'o', '--opm', './o'], /--opm \.\/o would overwrite the file of --oem/],
    [['a.csv', 'b.csv', '--oem', 'o'], /--oem takes the ephemeris of one log, and several are given/],
  ] as const)('%j is a usage error', (args, message) => {
    const asked = parseCommand(['review', ...args]);
    expect(() => checkOutputs(asked, asked.files, asked.files)).toThrow(message);
  });
});

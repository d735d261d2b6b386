import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { LossbookError } from '../errors.ts';
import type { Analysis } from '../review/types.ts';
import { errorCode } from './inputFiles.ts';
import type { Asked } from './parseCommand.ts';

/** A file that a review can be written to: the option that names it, what it holds, and how it is made. */
interface Output {
  readonly option: string;
  readonly what: string;
  readonly make: (analysis: Analysis) => Promise<string | Uint8Array>;
}

/** Each is made by a part of the program that is read only when it is asked for. */
const outputs: readonly Output[] = [
  {
    option: 'report',
    what: 'the report',
    make: async (analysis) => (await import('../exchange/report/reportHtml.ts')).reportHtml(analysis),
  },
  {
    option: 'channels',
    what: 'the channels',
    make: async ({ strips, review }) =>
      (await import('../exchange/channelsCsv.ts')).channelsCsv(strips, review.events),
  },
  {
    option: 'parquet',
    what: 'the flight',
    make: async (analysis) => (await import('../exchange/parquet.ts')).parquet(analysis),
  },
  {
    option: 'oem',
    what: 'the ephemeris',
    make: async (analysis) => (await import('../exchange/oem.ts')).oem(analysis, { created_ms: Date.now() }),
  },
  {
    option: 'opm',
    what: 'the orbit',
    make: async (analysis) => (await import('../exchange/opm.ts')).opm(analysis, { created_ms: Date.now() }),
  },
];

/** Names of the options that write a file of one log. */
export const outputOptions: readonly string[] = outputs.map(({ option }) => option);

/**
 * @param logs the logs to be reviewed
 * @param inputs paths that are read
 * @throws LossbookError `usage` where a file would be written for several logs, over an input or over another output
 */
export function checkOutputs(asked: Asked, logs: readonly string[], inputs: readonly string[]): void {
  const taken = new Map(inputs.map((path) => [resolve(path), 'an input']));
  for (const { option, what } of outputs) {
    const file = asked.value(option);
    if (file === undefined) continue;
    if (logs.length > 1) throw usage(`--${option} takes ${what} of one log, and several are given`);
    const before = taken.get(resolve(file));
    if (before !== undefined) throw usage(`--${option} ${file} would overwrite ${before}`);
    taken.set(resolve(file), `the file of --${option}`);
  }
}

/** Writes the files that were asked for. @throws LossbookError for what cannot be made or written. */
export async function writeOutputs(asked: Asked, analysis: Analysis): Promise<void> {
  for (const { option, make } of outputs) {
    const file = asked.value(option);
    if (file === undefined) continue;
    const made = await make(analysis);
    try {
      await writeFile(file, made);
    } catch (error) {
      throw new LossbookError('file-unwritable', { reason: errorCode(error) }, { file });
    }
  }
}

function usage(reason: string): LossbookError {
  return new LossbookError('usage', { reason, command: 'review' });
}

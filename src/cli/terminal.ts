import { once } from 'node:events';
import { plainText } from '../exchange/plainText.ts';

/** Where the command writes: results on stdout, notes on stderr. */
export interface Terminal {
  /** Writes a result as it is; it must already be harmless. */
  readonly result: (text: string) => void;
  /** Writes one line on stderr, made harmless. */
  readonly note: (text: string) => void;
  readonly width: number;
  /** True when stdout is a terminal that may be coloured (no-color.org). */
  readonly colour: boolean;
  /** True when a person watches stderr. */
  readonly watched: boolean;
}

/** The terminal, or the files and pipes, that the program was started with. */
export function processTerminal(): Terminal {
  const { stdout, stderr, env } = process;
  return {
    result: (text) => void stdout.write(text),
    note: (text) => void stderr.write(`lossbook: ${plainText(text)}\n`),
    // Some terminals report 0 columns when they do not know.
    width: Math.min(80, Math.max(40, stdout.columns || 80)),
    colour: stdout.isTTY === true && !env.NO_COLOR && env.TERM !== 'dumb',
    watched: stderr.isTTY === true,
  };
}

/** Waits for a slow reader of stdout, that results do not pile up. */
export async function stdoutDrained(): Promise<void> {
  if (process.stdout.writableNeedDrain) await once(process.stdout, 'drain');
}

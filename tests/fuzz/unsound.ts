import { LossbookError } from '../../src/errors.ts';
import { fileKind } from '../../src/log/fileKind.ts';
import { readLog } from '../../src/log/readLog.ts';
import type { Log } from '../../src/log/types.ts';

/** What became of one input: `log`, the code of a catalogued error, or what is wrong. */
export interface Outcome {
  readonly outcome: string;
  /** Null where the outcome is one that a reader may have. */
  readonly wrong: string | null;
}

/** Reads whatever it is given: the outcome is a sound Log or an error of the catalogue, never anything else. */
export async function outcomeOf(bytes: Uint8Array): Promise<Outcome> {
  try {
    const kind = fileKind(bytes, 'x');
    if (!['card', 'plan', 'log', 'unknown'].includes(kind)) return { outcome: 'kind', wrong: kind };
    const wrong = unsound(await readLog(bytes, { name: 'x' }));
    return { outcome: 'log', wrong };
  } catch (error) {
    if (!(error instanceof LossbookError))
      return {
        outcome: 'failure',
        wrong: error instanceof Error ? (error.stack ?? error.message) : String(error),
      };
    return { outcome: error.code, wrong: error.where.file === 'x' ? null : `${error.code} names no file` };
  }
}

/** What a log has that no log may have; null for a sound one. */
function unsound(log: Log): string | null {
  const { time } = log;
  if (time.length < 10) return 'too short';
  for (let i = 0; i < time.length; i++)
    if (!(time[i]! > (time[i - 1] ?? Number.NEGATIVE_INFINITY))) return `time stands still at ${i}`;
  for (const [name, values] of Object.entries(log.channels)) {
    if (values.length !== time.length) return `${name} has another length`;
    if (values.some((x) => Math.abs(x) === Number.POSITIVE_INFINITY)) return `${name} is infinite`;
  }
  for (const { channel, confidence, factor, reason } of log.readings) {
    if (!(confidence >= 0 && confidence <= 1)) return `confidence of ${channel}: ${confidence}`;
    if (!Number.isFinite(factor)) return `factor of ${channel}: ${factor}`;
    if (!/^\S.*\.$/su.test(reason)) return `reason of ${channel}: ${reason}`;
  }
  for (const { code, count } of log.notes) if (!(count > 0)) return `count of ${code}: ${count}`;
  for (const [name, step] of Object.entries(log.resolution))
    if (!(step > 0)) return `step of ${name}: ${step}`;
  return null;
}

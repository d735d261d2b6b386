import { attemptOf } from '../attempts/attempt.ts';
import { planAttemptOf } from '../attempts/planAttempt.ts';
import type { Attempt } from '../attempts/types.ts';
import { jsonLine } from '../exchange/plainJson.ts';
import type { Review } from '../review/types.ts';
import { complain } from './complain.ts';
import type { Asked } from './parseCommand.ts';
import { commonRequest, concernsAll, reviewOne } from './reviewOne.ts';
import type { Terminal } from './terminal.ts';

/** What is wanted of each log of many: its review, that as a line of JSON, or what a comparison takes of it. */
export type Wanted = 'review' | 'line' | 'attempt';

/** What became of one log. Plain data, which may cross between threads. */
export interface Outcome {
  readonly path: string;
  /** For stderr, in their order. */
  readonly notes: readonly string[];
  /** How many cards and plans were taken that lie beside the log. */
  readonly beside: number;
  /** 0, or the exit code of what went wrong. */
  readonly exit: number;
  /** What went wrong is wrong for every log. */
  readonly concernsAll: boolean;
  readonly review?: Review;
  readonly line?: string;
  readonly attempt?: Attempt;
  readonly planAttempt?: Attempt | null;
}

/** Reviews one log of many; nothing is thrown and nothing written. */
export async function outcomeOf(path: string, asked: Asked, wanted: Wanted): Promise<Outcome> {
  const notes: string[] = [];
  let beside = 0;
  const quiet: Terminal = {
    result: () => undefined,
    note: (text) => void notes.push(text),
    width: 80,
    colour: false,
    watched: false,
  };
  try {
    const { review, strips, planStrips } = await reviewOne(path, asked, commonRequest(asked), quiet, () => {
      beside++;
    });
    const done = { path, notes, beside, exit: 0, concernsAll: false };
    if (wanted === 'review') return { ...done, review };
    if (wanted === 'line') return { ...done, line: jsonLine({ log: path, review }) };
    return {
      ...done,
      attempt: attemptOf(review, strips),
      planAttempt: planAttemptOf(review, planStrips ?? null),
    };
  } catch (error) {
    const exit = complain(error, quiet, path);
    const failed = { path, notes, beside, exit, concernsAll: concernsAll(error) };
    if (wanted !== 'line' || failed.concernsAll) return failed;
    const message = notes.at(-1) ?? '';
    return { ...failed, line: jsonLine({ log: path, error: { exit, message } }) };
  }
}

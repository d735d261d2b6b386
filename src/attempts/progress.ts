import { decimal } from '../review/wording.ts';
import { theilSen } from './theilSen.ts';
import type { Progress } from './types.ts';

/** Trend of the margin over a group's attempts in their order, said with care. */
export function progressOf(order: readonly number[], margin: readonly number[]): Progress {
  const line = theilSen(order, margin);
  const n = margin.length;
  const none = { slope: null, low: null, high: null, confidence: 0, attempts: n };
  if (line === null) return { ...none, text: 'One attempt shows no trend.' };
  const rate = `${line.slope >= 0 ? '+' : ''}${decimal(line.slope, 1)} m/s an attempt`;
  const { low, high, confidence } = line;
  const base = { slope: line.slope, low, high, confidence, attempts: n };
  if (low === null || high === null)
    return { ...base, text: `${rate}; ${n} attempts are too few to say whether that is more than chance.` };
  const sure = `${decimal(100 * confidence, 0)} % interval ${decimal(low, 1)} to ${decimal(high, 1)}`;
  if (low > 0) return { ...base, text: `The margin grew: ${rate} (${sure}).` };
  if (high < 0) return { ...base, text: `The margin shrank: ${rate} (${sure}).` };
  return { ...base, text: `No trend beyond chance: ${rate} (${sure}).` };
}

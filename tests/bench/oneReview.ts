import { createReadStream, readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { type OpenedLog, openLog } from '../../src/cli/inputFiles.ts';
import { reviewJson } from '../../src/exchange/reviewJson.ts';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { ascentSpan } from '../../src/ledger/ascentEnd.ts';
import { budgetAlong } from '../../src/ledger/budget.ts';
import { wasteOf } from '../../src/ledger/waste.ts';
import { frameLedger } from '../../src/review/ledgerFigures.ts';
import { readRequest } from '../../src/review/readRequest.ts';
import { reviewLog } from '../../src/review/reviewFlight.ts';

/** Processor time of the stages of a review, ms, one after another in a fresh process. */
export interface StageTimes {
  readonly read: number;
  readonly reconstruct: number;
  readonly ledger: number;
  readonly toGo: number;
}

/** A review as a user has it: processor time, ms, the same by the clock, and the process's peak memory. */
export interface WholeTimes {
  readonly write: number;
  readonly whole: number;
  readonly byClock: number;
  readonly peak_MB: number;
}

/** Of all threads of this process, ms: other programs on the machine hardly change it, as they do the clock's. */
function clock(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

const peak_MB = (): number => process.resourceUsage().maxRSS / 1024;

export async function wholeReview(file: string, card: string): Promise<WholeTimes> {
  const [begun, start] = [performance.now(), clock()];
  const opened = await openLog(file);
  const { log, mission } = await readRequest(requestOf(opened, card));
  await opened.close();
  const { review } = await reviewLog(log, mission, card);
  const reviewed = clock();
  const text = reviewJson(review);
  if (text.length === 0) throw new Error('nothing was written');
  const end = clock();
  return {
    write: end - reviewed,
    whole: end - start,
    byClock: performance.now() - begun,
    peak_MB: peak_MB(),
  };
}

export async function stagesOfReview(file: string, card: string): Promise<StageTimes> {
  const t0 = clock();
  const opened = await openLog(file);
  const { log, mission } = await readRequest(requestOf(opened, card));
  await opened.close();
  const t1 = clock();
  const flight = buildFlight(log, mission);
  const t2 = clock();
  const span = ascentSpan(flight);
  const ground = frameLedger(flight, span, 'ground');
  frameLedger(flight, span, 'inertial');
  const t3 = clock();
  const budget = budgetAlong(flight, span, ground.curves.ideal);
  wasteOf(flight, span, budget.ways);
  return { read: t1 - t0, reconstruct: t2 - t1, ledger: t3 - t2, toGo: clock() - t3 };
}

/** papaparse alone, streaming the file row by row; processor time and the clock's, ms. */
export function tokenise(file: string): Promise<{ whole: number; byClock: number; rows: number }> {
  const [begun, start] = [performance.now(), clock()];
  let rows = 0;
  return new Promise((done, fail) => {
    Papa.parse<string[]>(createReadStream(file), {
      skipEmptyLines: true,
      step: () => {
        rows++;
      },
      complete: () => done({ whole: clock() - start, byClock: performance.now() - begun, rows }),
      error: fail,
    });
  });
}

function requestOf(log: OpenedLog, card: string) {
  return {
    log,
    card: { name: card, text: readFileSync(card, 'utf8') },
  };
}

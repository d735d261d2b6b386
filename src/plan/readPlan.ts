import { LossbookError } from '../errors.ts';
import { buildFlight } from '../flight/buildFlight.ts';
import { decodeText } from '../log/decode.ts';
import { delimitedTable } from '../log/delimitedTable.ts';
import { fileKind } from '../log/fileKind.ts';
import { looksLikeJson } from '../log/jsonMark.ts';
import { jsonTable } from '../log/jsonTable.ts';
import { parseJson } from '../log/jsonText.ts';
import type { RawTable } from '../log/rawTable.ts';
import { readLog } from '../log/readLog.ts';
import type { Mission } from '../mission/types.ts';
import { planOfFlight } from './planOfFlight.ts';
import { type ReadTable, tablePlan } from './tablePlan.ts';
import type { Plan } from './types.ts';

/**
 * Reads a plan of any form of METHODS §6: a sparse table of controls, a full profile, or another flight's log.
 * @param content the file's bytes (gzip or not) or its text
 * @param name file name, for messages and headings
 * @param mission the mission that the plan is for: a profile or flight is understood on its world and vehicle
 * @throws LossbookError `plan-*` (the first fault of a table), `log-is-a-card`, and what reading a table or a log
 * can throw
 */
export async function readPlan(content: Uint8Array | string, name: string, mission: Mission): Promise<Plan> {
  const read = await checkPlan(content, name, mission);
  if (read.plan === null) throw read.faults[0];
  return read.plan;
}

/** The same, with every fault of a table in place of the first. @throws LossbookError where it is no table at all */
export async function checkPlan(
  content: Uint8Array | string,
  name: string,
  mission: Mission,
): Promise<ReadTable> {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const { text } = await decodeText(bytes, name);
  const kind = fileKind(text);
  if (kind === 'card') throw new LossbookError('plan-is-a-card', {}, { file: name });
  if (kind === 'log' && rowsOf(text, name) >= LEAST_FLIGHT_ROWS) {
    const log = await readLog(bytes, { name });
    return { plan: { ...planOfFlight(buildFlight(log, mission)), name }, faults: [] };
  }
  const json = looksLikeJson(text) ? parseJson(text, name) : null;
  const table = tableOf(name, () =>
    json === null ? delimitedTable(text, name) : jsonTable(inner(json), name),
  );
  return tablePlan(table, json === null ? null : json.value, name);
}

/** The advice about a log's table would mislead the writer of a plan. */
function tableOf(file: string, read: () => RawTable): RawTable {
  try {
    return read();
  } catch (error) {
    const none = error instanceof LossbookError && error.code === 'log-no-table';
    throw none ? new LossbookError('plan-no-table', {}, { file }) : error;
  }
}

/** A table shorter than this is controls with some states beside them, not a profile. */
const LEAST_FLIGHT_ROWS = 100;

function rowsOf(text: string, file: string): number {
  if (looksLikeJson(text)) {
    const table = tableOf(file, () => jsonTable(inner(parseJson(text, file)), file));
    return table.columns[0]?.numbers.length ?? 0;
  }
  return text.split(/\r\n?|\n/u).filter((line) => line.trim() !== '').length - 1;
}

/** Where a document keeps its events in a list of their own, the controls are the rest of it. */
function inner<T extends { readonly value: unknown }>(content: T): T {
  const { value } = content;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return content;
  const { events: _events, ...rest } = value as Record<string, unknown>;
  return { ...content, value: rest };
}

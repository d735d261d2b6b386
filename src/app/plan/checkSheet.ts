import { LossbookError } from '../../errors.ts';
import { sentence } from '../../exchange/sentence.ts';
import { readMission } from '../../mission/readCard.ts';
import { cellTable } from '../../plan/cellTable.ts';
import { describePlan } from '../../plan/describePlan.ts';
import { checkPlan } from '../../plan/readPlan.ts';
import { tablePlan } from '../../plan/tablePlan.ts';
import type { Plan } from '../../plan/types.ts';
import { failureOf } from '../failure.ts';
import type { PlanCheck, PlanCurve, PlanFault, PlanSheetRequest } from '../protocol.ts';

const DEG = 180 / Math.PI;

/**
 * What the engine's reader makes of a plan in the editor, in the words of `lossbook check`: every fault, or what it
 * says. The cells are read first, since they can be told apart in any state; then the file that they make.
 */
export async function checkSheet({ plan, headers, rows }: PlanSheetRequest): Promise<PlanCheck> {
  let faults: readonly LossbookError[];
  try {
    const cells = tablePlan(cellTable(headers, rows), null, plan.name);
    const read = cells.plan === null ? cells : await checkPlan(plan.text, plan.name, readMission({}));
    if (read.plan !== null) return { faults: [], ...describePlan(read.plan), curve: curveOf(read.plan) };
    faults = read.faults;
  } catch (error) {
    if (!(error instanceof LossbookError)) throw error;
    faults = [error];
  }
  return { faults: faults.map(faultOf), understood: [], missing: [], curve: null };
}

function faultOf(error: LossbookError): PlanFault {
  const { what, next, where } = failureOf(error);
  return {
    row: where.row ?? null,
    column: where.column ?? null,
    text: `${sentence(what)} ${sentence(next)}`,
  };
}

function curveOf({ axisValues, pitch_rad, throttle }: Plan): PlanCurve {
  return {
    at: [...axisValues],
    pitch_deg: pitch_rad === null ? null : Array.from(pitch_rad, (x) => x * DEG),
    throttle_percent: throttle === null ? null : Array.from(throttle, (x) => x * 100),
  };
}

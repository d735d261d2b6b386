import { buildFlight } from '../../flight/buildFlight.ts';
import type { Log } from '../../log/types.ts';
import { readMission } from '../../mission/readCard.ts';
import type { Mission } from '../../mission/types.ts';
import { planOfFlight } from '../../plan/planOfFlight.ts';
import { checkPlan } from '../../plan/readPlan.ts';
import { thinPlan } from '../../plan/thinPlan.ts';
import type { Plan } from '../../plan/types.ts';
import { writePlan } from '../../plan/writePlan.ts';
import { formatFigure } from '../../units/figures.ts';
import type { TextFile } from '../book/types.ts';
import type { EditablePlan } from '../protocol.ts';
import { mostRows, planFileName } from './planFile.ts';

/** A plan of any form as a table to edit, with what was taken for granted on the way. */
function editablePlan(plan: Plan): EditablePlan {
  const { plan: thin, within } = thinPlan(plan, mostRows);
  const figure = (value: number, decimals: number) => formatFigure(value, { decimals });
  const thinned =
    within === null
      ? []
      : [
          `Of ${figure(plan.axisValues.length, 0)} rows ${thin.axisValues.length} stand here: straight lines between them follow the original within ${figure((within.pitch_rad * 180) / Math.PI, 2)}° and ${figure(100 * within.throttle, 1)} % throttle.`,
        ];
  return {
    plan: { name: planFileName(plan.name), text: writePlan(plan.form === 'flight' ? rounded(thin) : thin) },
    notes: [...thinned, ...plan.assumed],
  };
}

/** The controls of a flight as a table to edit. */
export function editableFlight(log: Log, mission: Mission): EditablePlan {
  return editablePlan(planOfFlight(buildFlight(log, mission)));
}

/** Digits that no log and no pilot stand for: milliseconds, hundredths of a degree, tenths of a percent stay. */
function rounded(plan: Plan): Plan {
  const to = (step: number) => (x: number) => Math.round(x / step) * step;
  const [at, pitch, throttle] = [to(1e-3), to((0.01 * Math.PI) / 180), to(1e-3)];
  return {
    ...plan,
    axisValues: plan.axisValues.map(at),
    pitch_rad: plan.pitch_rad?.map(pitch) ?? null,
    throttle: plan.throttle?.map(throttle) ?? null,
    events: plan.events.map((e) => ({ ...e, at: at(e.at) })),
  };
}

/**
 * A file that holds a plan of any form, as a table to edit.
 * @param card of the mission that a profile or a flight is understood on; null for none
 * @throws LossbookError what reading a plan or a card can throw
 */
export async function editableFile(
  content: Uint8Array,
  name: string,
  card: TextFile | null,
): Promise<EditablePlan> {
  const read = await checkPlan(content, name, readMission(card === null ? {} : { card }));
  if (read.plan === null) throw read.faults[0];
  return editablePlan(read.plan);
}

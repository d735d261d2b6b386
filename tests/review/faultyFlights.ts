import { readFileSync } from 'node:fs';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { readLog } from '../../src/log/readLog.ts';
import type { Log } from '../../src/log/types.ts';
import { readMission } from '../../src/mission/readCard.ts';
import type { Mission } from '../../src/mission/types.ts';
import { planOfAscent } from '../../src/plan/planOfAscent.ts';
import { planOfFlight } from '../../src/plan/planOfFlight.ts';
import type { Plan } from '../../src/plan/types.ts';
import { Ascent } from '../../src/refly/ascent.ts';
import { bestAscent } from '../../src/refly/bestAscent.ts';
import type { FlightProgram } from '../../src/refly/flightProgram.ts';
import type { FlightScript } from '../../src/refly/flightScript.ts';
import { flyPlan } from '../../src/refly/flyPlan.ts';
import { type ReflownFlight, reflown, reflyWith, steeredProgram } from '../../src/refly/reflown.ts';
import { simulatedLog } from '../../src/refly/simulatedLog.ts';
import { type ReferenceName, readCardText } from '../referenceFlights.ts';

/** A clean flight, from which flights with one fault each are made by flying it again with a change. */
export interface CleanFlight {
  readonly mission: Mission;
  readonly base: ReflownFlight;
  readonly log: Log;
  readonly plan: Plan;
}

/** The best ascent with one burn of the last stage for a reference flight's card, flown and understood as a flight. */
export function cleanFlight(
  name: ReferenceName,
  card: (json: { vehicle: { payload_kg: number } }) => void = () => undefined,
): CleanFlight {
  const json = JSON.parse(readCardText(name));
  // A gravity turn in dense air: no flight that holds its nose off the path there is clean.
  json.limits = { angleOfAttackInAir_deg: 0 };
  card(json);
  const mission = readMission({ card: { name: `${name}.mission.json`, text: JSON.stringify(json) } });
  const best = bestAscent(mission, { relight: false });
  if (best.kind !== 'found') throw new Error('no best ascent');
  const flight = flyPlan(planOfAscent(best.plan, 'best ascent'), mission, null).flight;
  const base = reflown(flight);
  if (base === null) throw new Error('it cannot be flown again');
  const program = steeredProgram(mission, base.script, base.steered)!;
  const log = flownLog(mission, base.script, program);
  const plan = planOfFlight(buildFlight(log, mission));
  return { mission, base: reflown(buildFlight(log, mission))!, log, plan };
}

/** The clean flights in `tests/review/flights`: best ascents of unlike rockets, in six rounded channels; synthetic. */
export const storedNames = ['light', 'heavy', 'relit', 'earth', 'boosters', 'single', 'mars'] as const;
export type StoredName = (typeof storedNames)[number];

/** One of them. @param change of its card, where the flight is to be judged by another */
export async function storedFlight(
  name: StoredName,
  change: (card: StoredCard) => void = () => undefined,
): Promise<CleanFlight> {
  const folder = `${process.cwd()}/tests/review/flights`;
  const card = JSON.parse(readFileSync(`${folder}/clean-${name}.mission.json`, 'utf8')) as StoredCard;
  change(card);
  const mission = readMission({ card: { name: `clean-${name}.mission.json`, text: JSON.stringify(card) } });
  const log = await readLog(readFileSync(`${folder}/clean-${name}.csv`), { name: `clean-${name}.csv` });
  const flight = buildFlight(log, mission);
  return { mission, base: reflown(flight)!, log, plan: planOfFlight(flight) };
}

/** As much of a card as the tests change. */
export interface StoredCard {
  site: Record<string, unknown>;
  target: Record<string, unknown>;
  vehicle: { payload_kg: number; stages: Record<string, number>[] };
}

/** The log of a program, flown on a few seconds after its last step so that the cutoff shows. */
export function flownLog(
  mission: Mission,
  script: FlightScript,
  program: FlightProgram,
  name = 'flight.csv',
): Log {
  const ascent = new Ascent(mission.world, script.rocket, { carryLosses: false });
  const steps = [...program.steps, { do: 'coast', until: { kind: 'duration', duration_s: 8 } } as const];
  return simulatedLog(ascent, { ...program, steps }, name).log;
}

/** The log of a changed script, its last stage steered anew. */
export function changedLog({ mission, base }: CleanFlight, script: FlightScript): Log {
  const steering = reflyWith(base, script)!;
  return flownLog(mission, script, steeredProgram(mission, script, steering)!);
}

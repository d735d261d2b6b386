import type { FlightScript } from '../../refly/flightScript.ts';
import { reflyWith } from '../../refly/reflown.ts';
import { fullMass_kg } from '../../refly/rocket.ts';
import { rocketOf } from '../../refly/rocketOf.ts';
import { decimal } from '../wording.ts';
import { type Candidate, type Finder, marginLost, reflownSigma_m_s } from './types.ts';

/** Shares under which a vehicle is as its card says. */
const SAME_MASS = 1e-4;
const SAME_THRUST = 0.01;
const SAME_ISP = 0.005;

/** Heavier than its card, thrust or specific impulse under its rating: each flown again as the card has it. */
export const vehicleFindings: Finder = (o) => {
  const { flight, reflown } = o;
  const vehicle = flight.mission.vehicle;
  const card = vehicle === null ? null : rocketOf(vehicle).rocket;
  if (reflown === null || card === null) return [];
  const { script } = reflown;
  const out: Candidate[] = [];
  const costWith = (changed: FlightScript): number | null => {
    const end = reflyWith(reflown, changed);
    return end === null ? null : reflown.steered.total_m_s - end.total_m_s;
  };
  const whole = {
    start_s: flight.burns[0]?.start_s ?? 0,
    end_s: flight.time[o.span.end]!,
    sigma_m_s: reflownSigma_m_s(o),
    claim: 'vehicle',
  } as const;
  const heavier = script.rocket.payload_kg - card.payload_kg;
  if (heavier > Math.max(SAME_MASS * fullMass_kg(card), 3 * flight.noise.mass_kg)) {
    // A heavier vehicle's loss is not in its projected total alone: it also has less delta-v.
    const lost = marginLost(
      reflown.steered,
      reflyWith(reflown, { ...script, rocket: { ...script.rocket, payload_kg: card.payload_kg } }),
    );
    if (lost !== null)
      out.push({
        ...whole,
        code: 'mass-above-card',
        cost_m_s: lost,
        text: `${decimal(heavier, 0)} kg heavier at lift-off than its card says.`,
        evidence: `The log begins with ${decimal(fullMass_kg(script.rocket), 0)} kg, the card has ${decimal(fullMass_kg(card), 0)} kg; as the card has it the margin would be ${decimal(lost, 0)} m/s more.`,
        advice: 'Weigh payload and fittings again, or put the true masses in the card and plan with them.',
      });
  }
  script.rocket.stages.forEach((stage, k) => {
    const rated = card.stages[k];
    if (rated === undefined || k >= script.stages.length) return;
    const start_s = flight.burns.find((b) => b.stage === k)?.start_s ?? 0;
    const end_s = flight.burns.findLast((b) => b.stage === k)?.end_s ?? 0;
    const as = (changed: typeof stage): FlightScript => ({
      ...script,
      rocket: { ...script.rocket, stages: script.rocket.stages.map((s, i) => (i === k ? changed : s)) },
    });
    // Thrust that lacks in proportion to the specific impulse is the specific impulse's: the flow is as rated.
    const ratedFlow_N = (rated.thrustVacuum_N * stage.ispVacuum_s) / rated.ispVacuum_s;
    if (stage.thrustVacuum_N < (1 - SAME_THRUST) * ratedFlow_N) {
      const cost = costWith(as({ ...stage, thrustVacuum_N: ratedFlow_N }));
      if (cost !== null)
        out.push({
          ...whole,
          start_s,
          end_s,
          code: 'thrust-below-rating',
          cost_m_s: cost,
          text: `The stage “${stage.name}” gave ${decimal(100 * (1 - stage.thrustVacuum_N / ratedFlow_N), 1)} % less thrust than its card says.`,
          evidence: `Its propellant flow shows ${decimal(stage.thrustVacuum_N / 1000, 0)} kN in vacuum at full throttle, rated ${decimal(rated.thrustVacuum_N / 1000, 0)} kN.`,
          advice: 'Check engines and throttle setting; if that is what the engine gives, plan with it.',
        });
    }
    if (stage.ispVacuum_s < (1 - SAME_ISP) * rated.ispVacuum_s) {
      const lost = marginLost(
        reflown.steered,
        reflyWith(
          reflown,
          as({
            ...stage,
            ispVacuum_s: rated.ispVacuum_s,
            thrustVacuum_N: (stage.thrustVacuum_N * rated.ispVacuum_s) / stage.ispVacuum_s,
          }),
        ),
      );
      if (lost !== null)
        out.push({
          ...whole,
          start_s,
          end_s,
          code: 'isp-below-rating',
          cost_m_s: lost,
          text: `The stage “${stage.name}” had a specific impulse of ${decimal(stage.ispVacuum_s, 1)} s, rated ${decimal(rated.ispVacuum_s, 1)} s.`,
          evidence: `Identified from the log; at its rating the margin would be ${decimal(lost, 0)} m/s more.`,
          advice: 'Check the engine’s mixture and nozzle; if that is what it gives, plan with it.',
        });
    }
  });
  return out;
};

import { indexAt } from '../../flight/events.ts';
import { staysInAir } from '../../flight/peakAltitude.ts';
import type { Flight } from '../../flight/types.ts';
import { bareDragArea_m2, parachutesDragArea_m2 } from '../../mission/returnAreas.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../units/standardGravity.ts';
import { figure, unavailable } from '../figure.ts';
import type { Finding } from '../types.ts';
import { decimal, formatKm } from '../wording.ts';
import type { WayDownReview } from './types.ts';

/** Without a limit in the card an entry is called steep from here, in g; crews and structures vary. */
const STEEP_G = 10;
/** Dynamic pressure at opening over that of the bare body's own steady fall. */
const FAST_SHARE = 1.5;
/** Share of the card's opening altitude, and metres, by which an opening is low; without a card a plain height. */
const LOW_SHARE = 0.9;
const LOW_M = 300;
/** Rate of descent over that expected. */
const SINK_SHARE = 1.15;
/** Delta-v that a better place would have saved, from which it is told, m/s. */
const TOLD_M_S = 3;

const noCost = {
  cost_m_s: unavailable('not a matter of delta-v'),
  propellant_kg: unavailable('not a matter of propellant'),
} as const;

const caution = 'Check it against what the vehicle was built for; the log does not know that.';

/** What was wrong on the way down, with cautions. */
export function wayDownFindings(flight: Flight, way: WayDownReview): Finding[] {
  return [
    ...deorbitFindings(way),
    ...entryFindings(flight, way),
    ...parachuteFindings(flight, way),
    ...landingFindings(way),
  ];
}

function deorbitFindings({ deorbit }: WayDownReview): Finding[] {
  const [spent, best] = [deorbit?.deltaV_m_s.value ?? null, deorbit?.optimum_m_s.value ?? null];
  if (deorbit === null || spent === null || best === null || spent - best < TOLD_M_S) return [];
  const cost = spent - best;
  return [
    {
      code: 'deorbit-place',
      start_s: deorbit.start_s,
      end_s: deorbit.end_s,
      cost_m_s: figure(cost, 0.5, 'derived'),
      propellant_kg: unavailable('not reckoned'),
      text: `The deorbit burn cost ${decimal(cost, 0)} m/s more than it had to.`,
      evidence: `${decimal(spent, 0)} m/s brought periapsis to ${formatKm(deorbit.periapsisAfter_m.value ?? Number.NaN)}; at apoapsis ${decimal(best, 0)} m/s would have.`,
      advice: 'Burn straight against the motion, at apoapsis, where the landing place allows it.',
    },
  ];
}

function entryFindings(flight: Flight, { entry, deorbit }: WayDownReview): Finding[] {
  const peak = entry?.peakDeceleration_m_s2;
  if (entry === null || peak === undefined || peak.figure.value === null) return [];
  const limit = flight.mission.limits.acceleration_m_s2 ?? STEEP_G * STANDARD_GRAVITY_M_S2;
  if (peak.figure.value <= limit) return [];
  const g = (a: number) => `${decimal(a / STANDARD_GRAVITY_M_S2, 1)} g`;
  return [
    {
      code: 'entry-too-steep',
      start_s: entry.start_s,
      end_s: entry.end_s,
      ...noCost,
      text: `The entry was steep: ${g(peak.figure.value)} at ${decimal(peak.time_s, 0)} s, over ${g(limit)}.`,
      evidence: `The path ran ${decimal(entry.angle_deg.value ?? Number.NaN, 1)}° under the horizontal at ${decimal(entry.speed_m_s.value ?? Number.NaN, 0)} m/s where ${staysInAir(flight) ? 'it began to fall' : 'the air began'}.`,
      advice: `${deorbit === null ? 'It fell without having been in orbit: only a lower or a flatter path would have been milder.' : 'A higher periapsis at deorbit makes it shallower.'} ${flight.mission.limits.acceleration_m_s2 === null ? 'The card gives no limit: ten g was taken. ' : ''}${caution}`,
    },
  ];
}

function parachuteFindings(flight: Flight, { parachute, touchdown_s }: WayDownReview): Finding[] {
  if (parachute === null) return [];
  const out: Finding[] = [];
  const span = { start_s: parachute.open_s, end_s: parachute.full_s ?? parachute.open_s };
  const opened = parachute.openAltitude_m.value;
  const planned = parachute.plannedOpenAltitude_m;
  const ground =
    touchdown_s === null
      ? flight.mission.site.altitude_m
      : flight.altitude[indexAt(flight.time, touchdown_s)]!;
  const least = planned === null ? ground + LOW_M : LOW_SHARE * planned;
  if (opened !== null && opened < least) {
    out.push({
      code: 'parachute-low',
      ...span,
      ...noCost,
      text: `The parachute opened low, at ${decimal(opened, 0)} m.`,
      evidence:
        planned === null
          ? `No altitude is planned in the card; ${LOW_M} m above the ground is taken as low.`
          : `The card has it open at ${decimal(planned, 0)} m.`,
      advice: `Open earlier, or arm by altitude as well as by time. ${caution}`,
    });
  }
  const speed = parachute.openSpeed_m_s.value;
  const pressure = parachute.openDynamicPressure_Pa.value;
  const steady = steadyPressure_Pa(flight);
  if (pressure !== null && speed !== null && steady !== null && pressure > FAST_SHARE * steady) {
    const load = parachute.peakLoad_m_s2.figure.value ?? Number.NaN;
    out.push({
      code: 'parachute-fast',
      ...span,
      ...noCost,
      text: `The parachute opened fast, at ${decimal(speed, 0)} m/s.`,
      evidence: `Dynamic pressure was ${decimal(pressure, 0)} Pa, ${decimal(pressure / steady, 1)} times that of the bare body’s steady fall; the load rose to ${decimal(load / STANDARD_GRAVITY_M_S2, 1)} g.`,
      advice: `Wait until the body has slowed, or reef the canopy. ${caution}`,
    });
  }
  const body = flight.mission.returnVehicle;
  const area = parachute.dragArea_m2.value;
  if (parachute.inflation === 'partial' && touchdown_s !== null && body !== null && area !== null) {
    const card = bareDragArea_m2(body) + parachutesDragArea_m2(body);
    out.push({
      code: 'parachute-not-full',
      ...span,
      end_s: touchdown_s,
      ...noCost,
      text: `The parachute did not fill: ${decimal((100 * area) / card, 0)} % of its drag area was there.`,
      evidence: `The deceleration down to the last seconds before the ground gives ${decimal(area, 0)} m², and the card ${decimal(card, 0)} m².`,
      advice: `Look for a canopy that stayed reefed, tangled or shut; more mass than the log or card says would look the same. ${caution}`,
    });
  }
  return out;
}

/** Dynamic pressure of the steady fall of the bare body by the card's return: q = mg/CdA. */
function steadyPressure_Pa(flight: Flight): number | null {
  const body = flight.mission.returnVehicle;
  if (body === null || body.mass_kg === null) return null;
  const area = bareDragArea_m2(body);
  if (!(area > 0)) return null;
  const { world } = flight.mission;
  return (body.mass_kg * world.mu_m3_s2) / world.radius_m ** 2 / area;
}

function landingFindings(way: WayDownReview): Finding[] {
  const out: Finding[] = [];
  const { descent, poweredLanding: powered, touchdown_s } = way;
  const speed = way.touchdownSpeed_m_s.value;
  if (way.code === 'landed-hard' && speed !== null && touchdown_s !== null) {
    out.push({
      code: 'touchdown-hard',
      start_s: touchdown_s,
      end_s: touchdown_s,
      ...noCost,
      text: `The touchdown was hard: ${decimal(speed, 1)} m/s.`,
      evidence: 'Speed in the last second before rest; above 12 m/s is called hard here.',
      advice: caution,
    });
  }
  const [rate, expected] = [descent?.rate_m_s.value ?? null, descent?.expected_m_s.value ?? null];
  // A canopy that is not full already says why it sinks fast.
  const told = way.parachute?.inflation === 'partial';
  if (!told && rate !== null && expected !== null && touchdown_s !== null && rate > SINK_SHARE * expected) {
    out.push({
      code: 'descent-fast',
      start_s: touchdown_s - 10,
      end_s: touchdown_s,
      ...noCost,
      text: `It came down at ${decimal(rate, 1)} m/s, and ${decimal(expected, 1)} m/s was to be expected.`,
      evidence: '√(2mg/(ρ·CdA)) with the card’s mass and areas at that altitude.',
      advice: `More mass than the card says, or a smaller drag area, would do that. ${caution}`,
    });
  }
  const hover = powered?.hoverLoss_m_s.value ?? 0;
  if (powered !== null && hover > TOLD_M_S) {
    out.push({
      code: 'landing-hover',
      start_s: powered.end_s - powered.hover_s,
      end_s: powered.end_s,
      cost_m_s: figure(hover, 0, 'derived'),
      propellant_kg: unavailable('not reckoned'),
      text: `Hovering before touchdown cost ${decimal(hover, 0)} m/s.`,
      evidence: `${decimal(powered.hover_s, 1)} s nearly still above the ground, with the engine carrying the weight.`,
      advice: 'Begin the landing burn later, and let it end at the ground.',
    });
  }
  return out;
}

import { reflyWith } from '../../refly/reflown.ts';
import { withTilt } from '../../refly/scriptEdits.ts';
import { planDeviations } from '../deviations.ts';
import { decimal } from '../wording.ts';
import {
  type Candidate,
  contributed,
  type Finder,
  type FindingCode,
  type Occasion,
  reflownSigma_m_s,
  shortOfPropellant,
} from './types.ts';

/** Pitch-over this much beside the plan is late or early, s. */
const AWAY_S = 1.5;
/** Steps of the log on top of it: the moment lies somewhere between two rows. */
const AWAY_ROWS = 1.5;
/** A swing of the nose counts from this share of the largest difference. */
const SWING_SHARE = 0.4;
/** Tilts tried on flights without a plan, times what was flown. */
const TRIED = [1.05, 1.1, 1.15, 1.2, 1.3, 1.4];

/** The pitch program before the last stage: its start, how hard it turned, how steep it stayed. */
export const pitchFindings: Finder = (o) => {
  const planned = contributed(o, 'pitch');
  return planned === null ? withoutPlan(o) : withPlan(o, planned);
};

function withPlan(o: Occasion, cost: number): Candidate[] {
  const { plan, reflown, flight, span } = o;
  if (plan === null) return [];
  const over = pitchOver(o.flight, o.events);
  const planOver = pitchOver(plan.flown.flight, null);
  const end_s = reflown?.handover.start.time_s ?? flight.time[span.end]!;
  const worst = worstPitch(o, end_s);
  const away = over === null || planOver === null ? 0 : over - planOver;
  const rows = flight.time.length - 1;
  const least = AWAY_S + (AWAY_ROWS * (flight.time[rows]! - flight.time[0]!)) / Math.max(1, rows);
  const steep = worst === null || worst.flown > worst.planned;
  const hard = worst !== null && !steep && over !== null && worst.time_s < over + 25;
  const wavering = Math.abs(away) <= least && worst !== null && worst.wavers;
  const code: FindingCode = wavering
    ? 'angle-of-attack-in-air'
    : away > least
      ? 'pitch-over-late'
      : away < -least
        ? 'pitch-over-early'
        : hard
          ? 'pitch-over-too-hard'
          : steep
            ? 'too-steep'
            : 'too-flat';
  const start =
    over === null || planOver === null
      ? ''
      : away > least
        ? `Pitched over ${decimal(away, 0)} s late`
        : away < -least
          ? `Pitched over ${decimal(-away, 0)} s early`
          : hard
            ? 'Pitched over too hard'
            : '';
  const rest = wavering
    ? `Wavered up to ${decimal(Math.abs(worst.flown - worst.planned), 0)}° about the planned pitch`
    : worst === null
      ? ''
      : `${start === '' ? 'Flown' : ' and flown'} up to ${decimal(Math.abs(worst.flown - worst.planned), 0)}° too ${steep ? 'steep' : 'flat'}`;
  return [
    {
      code,
      start_s: Math.max(0, Math.min(over ?? 0, planOver ?? 0)),
      end_s,
      cost_m_s: cost,
      sigma_m_s: reflownSigma_m_s(o),
      claim: 'pitch',
      text: `${start}${rest}${end_s < flight.time[span.end]! ? ' before the last stage' : ''}.`,
      evidence: [
        over === null || planOver === null
          ? ''
          : `Pitch-over at ${decimal(over, 1)} s, planned ${decimal(planOver, 1)} s.`,
        worst === null
          ? ''
          : `At ${decimal(worst.altitude_m / 1000, 0)} km pitch was ${decimal(worst.flown, 0)}°, planned ${decimal(worst.planned, 0)}°.`,
      ]
        .filter((t) => t !== '')
        .join(' '),
      advice: advice[code] ?? '',
    },
  ];
}

const advice: Partial<Record<FindingCode, string>> = {
  'angle-of-attack-in-air':
    'Hold the planned pitch with small corrections: each swing of the nose costs thrust and loads the vehicle.',
  'pitch-over-late':
    'Begin the pitch-over sooner, at low speed, and follow the planned pitch: height comes by itself, sideways speed does not.',
  'pitch-over-early':
    'Climb straight up a little longer before the pitch-over, so that the turn stays out of dense air.',
  'pitch-over-too-hard':
    'Tilt less at the pitch-over: a few degrees are enough, and gravity turns the path from there.',
  'too-steep': 'Let the nose down sooner during the first stage: too much of the thrust went into height.',
  'too-flat': 'Keep the nose up longer during the first stage: the path stayed in dense air.',
};

function pitchOver(flight: Occasion['flight'], events: Occasion['events'] | null): number | null {
  const found = events?.find((e) => e.name === 'pitch-over');
  if (found !== undefined) return found.time_s;
  const { pitch, time, liftOffIndex } = flight;
  if (pitch === null) return null;
  for (let i = liftOffIndex; i < time.length; i++)
    if (Math.PI / 2 - pitch[i]! > Math.PI / 180) return time[i]!;
  return null;
}

interface Worst {
  readonly altitude_m: number;
  readonly time_s: number;
  /** Degrees. */
  readonly flown: number;
  readonly planned: number;
  /** True where the differences go to and fro between both sides. */
  readonly wavers: boolean;
}

/** Where flown and planned pitch at equal altitude were farthest apart before the last stage. */
function worstPitch(o: Occasion, end_s: number): Worst | null {
  const { plan, flight, span } = o;
  if (plan === null) return null;
  const curve = planDeviations(
    { flight, span, strips: o.strips },
    { flight: plan.flown.flight, span: plan.flown.span, strips: plan.strips },
  ).find((d) => d.quantity === 'pitch_deg');
  let best: Omit<Worst, 'wavers'> | null = null;
  let most = 0;
  const differences: number[] = [];
  // Beyond the burn-out before the last stage a coast's or the last stage's pitch would be compared.
  const last = o.reflown?.last ?? Number.POSITIVE_INFINITY;
  const burnOut = (f: Occasion['flight']): number => {
    const burn = f.burns.findLast((b) => b.stage < last);
    return burn === undefined ? Number.POSITIVE_INFINITY : f.altitude[burn.endIndex]!;
  };
  const top_m = Math.min(burnOut(flight), burnOut(plan.flown.flight));
  let i = flight.liftOffIndex;
  curve?.at.forEach((altitude_m, k) => {
    const [flown, planned] = [curve.flown[k] ?? null, curve.planned[k] ?? null];
    if (flown === null || planned === null || altitude_m > top_m) return;
    while (i < span.end && flight.altitude[i]! < altitude_m) i++;
    if (flight.time[i]! > end_s) return;
    differences.push(flown - planned);
    if (Math.abs(flown - planned) <= most) return;
    most = Math.abs(flown - planned);
    best = { altitude_m, time_s: flight.time[i]!, flown, planned };
  });
  return best === null
    ? null
    : { ...(best as Omit<Worst, 'wavers'>), wavers: swings(differences, SWING_SHARE * most) > 2 };
}

/** How often a curve goes from one side of zero to the other, by more than a size on both. */
function swings(differences: readonly number[], size: number): number {
  let side = 0;
  let count = 0;
  for (const d of differences) {
    if (Math.abs(d) <= size || Math.sign(d) === side) continue;
    side = Math.sign(d);
    count++;
  }
  return count;
}

/** Without a plan, and where the target was missed: a tilt that would have cost less, by re-flying. */
function withoutPlan(o: Occasion): Candidate[] {
  const { reflown, flight } = o;
  if (reflown === null || !shortOfPropellant(o)) return [];
  const base = reflown.steered.total_m_s;
  let best = { factor: 1, gain: 0 };
  for (const side of [TRIED, TRIED.map((f) => 2 - f)]) {
    for (const factor of side) {
      const end = reflyWith(reflown, withTilt(reflown.script, reflown.last, factor));
      if (end === null) break;
      const gain = base - end.total_m_s;
      if (gain <= best.gain) break;
      best = { factor, gain };
    }
    if (best.factor !== 1) break;
  }
  if (best.factor === 1) return [];
  const steep = best.factor > 1;
  const over = pitchOver(flight, o.events) ?? 0;
  const share = Math.abs(best.factor - 1) * 100;
  return [
    {
      code: steep ? 'too-steep' : 'too-flat',
      start_s: over,
      end_s: reflown.handover.start.time_s,
      cost_m_s: best.gain,
      sigma_m_s: reflownSigma_m_s(o),
      claim: 'pitch',
      text: `Flown too ${steep ? 'steep' : 'flat'} before the last stage.`,
      evidence: `The last stage was lit at ${decimal(reflown.handover.start.altitude_m / 1000, 0)} km with the path ${decimal((reflown.handover.start.flightPathAngle_rad * 180) / Math.PI, 0)}° above the horizon; flown again with ${decimal(share, 0)} % ${steep ? 'more' : 'less'} tilt the ascent costs ${decimal(best.gain, 0)} m/s less.`,
      advice: advice[steep ? 'too-steep' : 'too-flat'] ?? '',
    },
  ];
}

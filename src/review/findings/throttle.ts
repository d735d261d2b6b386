import { reflyWith } from '../../refly/reflown.ts';
import { withThrottle } from '../../refly/scriptEdits.ts';
import { decimal } from '../wording.ts';
import {
  type Candidate,
  contributed,
  type Finder,
  type Occasion,
  reflownSigma_m_s,
  shortOfPropellant,
} from './types.ts';

/** A throttle under this is a throttle-down. */
const DOWN = 0.97;
/** Throttles tried in dense air, fractions of what was flown. */
const TRIED = [0.9, 0.8, 0.7, 0.6];

/** Throttled down too long, or too much thrust for the air. */
export const throttleFindings: Finder = (o) => {
  const planned = contributed(o, 'throttle');
  return planned === null ? withoutPlan(o) : withPlan(o, planned);
};

function stretchDown({
  flight,
  span,
  reflown,
}: Occasion): { start: number; end: number; mean: number } | null {
  const { throttle, burns } = flight;
  if (throttle === null) return null;
  let start = -1;
  let end = -1;
  let sum = 0;
  let time = 0;
  for (const burn of burns) {
    if (reflown !== null && burn.stage >= reflown.last) break;
    for (let i = burn.startIndex + 1; i < burn.endIndex && i <= span.end; i++) {
      if (throttle[i]! >= DOWN) continue;
      if (start < 0) start = i;
      end = i;
      const dt = flight.time[i + 1]! - flight.time[i]!;
      sum += throttle[i]! * dt;
      time += dt;
    }
  }
  return start < 0 || time < 1 ? null : { start, end, mean: sum / time };
}

function withoutPlan(o: Occasion): Candidate[] {
  const { reflown } = o;
  if (reflown === null) return [];
  const down = stretchDown(o);
  if (down !== null) {
    const full = reflyWith(
      reflown,
      withThrottle(reflown.script, reflown.last, () => 1),
    );
    if (full !== null && !limited(o))
      return [tooLong(o, down, reflown.steered.total_m_s - full.total_m_s, 'at full thrust')];
  }
  if (!shortOfPropellant(o)) return [];
  const base = reflown.steered.total_m_s;
  let best = { factor: 1, gain: 0 };
  for (const factor of TRIED) {
    const end = reflyWith(
      reflown,
      withThrottle(reflown.script, reflown.last, (t) => t * factor),
    );
    if (end === null) break;
    const gain = base - end.total_m_s;
    if (gain <= best.gain) break;
    best = { factor, gain };
  }
  return best.factor === 1 ? [] : [tooMuch(o, best.gain, best.factor)];
}

/** The card asks for a limit that a throttle-down may have served. */
function limited({ flight }: Occasion): boolean {
  const { dynamicPressure_Pa, acceleration_m_s2 } = flight.mission.limits;
  return dynamicPressure_Pa !== null || acceleration_m_s2 !== null;
}

function withPlan(o: Occasion, cost: number): Candidate[] {
  const down = stretchDown(o);
  const { flight, plan } = o;
  const mean = (values: Float64Array | null): number =>
    values === null ? 1 : values.reduce((s, x) => s + (Number.isFinite(x) ? x : 0), 0) / values.length;
  const flownLess = mean(flight.throttle) < mean(plan?.flown.flight.throttle ?? null);
  if (flownLess && down !== null) return [tooLong(o, down, cost, 'with the planned throttle')];
  return [tooMuch(o, cost, null)];
}

function tooLong(
  o: Occasion,
  { start, end, mean }: { start: number; end: number; mean: number },
  cost: number,
  against: string,
): Candidate {
  const { time } = o.flight;
  const length = time[end]! - time[start]!;
  return {
    code: 'throttle-down-long',
    start_s: time[start]!,
    end_s: time[end]!,
    cost_m_s: cost,
    sigma_m_s: reflownSigma_m_s(o),
    claim: 'throttle',
    text: `Throttled down to ${decimal(mean * 100, 0)} % for ${decimal(length, 0)} s.`,
    evidence: `Flown again ${against}, everything else alike, the ascent costs ${decimal(cost, 0)} m/s less: gravity took the difference.`,
    advice:
      'Throttle down only as far and as long as a limit asks for, and go back to full thrust as soon as the air thins.',
  };
}

function tooMuch(o: Occasion, cost: number, factor: number | null): Candidate {
  const burn = o.flight.burns[0];
  const ratio = o.strips.channels.thrustToWeight?.values[(burn?.startIndex ?? 0) + 2] ?? null;
  return {
    code: 'thrust-over-air',
    start_s: burn?.start_s ?? 0,
    end_s: burn?.end_s ?? 0,
    cost_m_s: cost,
    sigma_m_s: reflownSigma_m_s(o),
    claim: 'throttle',
    text: `More thrust than the air allows${ratio === null ? '' : `: thrust-to-weight ${decimal(ratio, 2)} off the pad`}.`,
    evidence: `Flown again ${factor === null ? 'with the planned throttle' : `at ${decimal(factor * 100, 0)} % of the throttle`}, drag and turning together cost ${decimal(cost, 0)} m/s less than gravity takes more.`,
    advice:
      factor === null
        ? 'Throttle as planned while the dynamic pressure is high.'
        : `Throttle to about ${decimal(factor * 100, 0)} % while the dynamic pressure is high, or turn earlier at full thrust.`,
  };
}

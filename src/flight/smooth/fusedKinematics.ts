import type { ChannelName, Log } from '../../log/types.ts';
import type { Mission } from '../../mission/types.ts';
import type { Axis } from '../axis.ts';
import { channelSamples, sigmaOf } from '../channelSamples.ts';
import type { Kinematics } from '../kinematics.ts';
import type { Break } from '../localPolynomial.ts';
import { filled } from '../onAxis.ts';
import { fusePath } from './fusedPath.ts';
import { gatheredDistance } from './gatheredDistance.ts';
import type { PathEvidence, WeighedSamples } from './pathEvidence.ts';

/** Noise from which a channel is worth holding against the others; below it its samples stand as they are. */
const NOISY_M = 0.5;
const NOISY_M_S = 0.1;
/** How long after the last burn of the way up the channels are still fused. */
const COAST_S = 60;
/** The fused path gives way to the single channels over so long. */
const SEAM_S = 5;
/** A display's edges are never surer than this share of its step. */
const EDGE_SHARE = 0.03;

export interface FusionInput {
  readonly log: Log;
  /** Row times from lift-off. */
  readonly t: Float64Array;
  readonly axis: Axis;
  readonly breaks: readonly Break[];
  readonly mission: Mission;
  readonly startsInFlight: boolean;
}

/**
 * The way up, from whatever the log has of altitude, speed, vertical and horizontal speed and position at once: one
 * motion under white jerk, each channel weighed by its noise (see fusedPath), in place of one channel chosen for
 * each quantity. Channels so clean that they need no smoothing stay as logged, and so does everything where the
 * channels do not tell the same motion.
 * @param path kinematics of the single channels, on the axis
 */
export function fuseKinematics(input: FusionInput, path: Kinematics): Kinematics {
  const { log, t, axis, breaks, mission } = input;
  const query = axis.time;
  const until = wayUp_s(path.altitude, query, breaks);
  if (until === null || log.channels.altitude === undefined) return path;
  const read = (name: ChannelName): Reading | null =>
    log.channels[name] === undefined ? null : reading(log, t, name, until);
  const altitude = read('altitude')!;
  const speed = read('speed');
  const vertical = read('verticalSpeed');
  const horizontal = read('horizontalSpeed');
  const noisy =
    altitude.sigma > NOISY_M ||
    [speed, vertical, horizontal].some((channel) => channel !== null && channel.sigma > NOISY_M_S);
  if (!noisy || (speed === null && horizontal === null)) return path;
  // A log that begins at lift-off may begin in motion.
  const rises =
    !input.startsInFlight && axis.liftOff >= 0 && path.speed[axis.liftOff]! <= 4 * path.speedSigma_m_s;
  const evidence: PathEvidence = {
    altitude: altitude.samples,
    speed: speed?.samples ?? null,
    verticalSpeed: vertical?.samples ?? null,
    horizontalSpeed: horizontal?.samples ?? null,
    distance: gatheredDistance(log, t, filled(t, log.channels.altitude)!, mission, until),
    breaks: breaks.map((b) => b.time_s).filter((b) => b > 0 && b < until),
    restUntil_s: rises ? 0 : null,
    guess: path,
    query,
  };
  let fused = fusePath(evidence);
  // Positions count from elsewhere, or lag, more often than speeds do: the others are asked without them.
  const placed = evidence.distance !== null && fused !== null;
  if (fused === null && evidence.distance !== null) fused = fusePath({ ...evidence, distance: null });
  if (fused === null) return path;
  const sound = { altitude: altitude.sigma <= NOISY_M, vertical: isSound(vertical), speed: isSound(speed) };
  const length = fused.verticalSpeed.map((w, i) => Math.hypot(w, fused.horizontalSpeed[i]!));
  const join = (own: Float64Array, joint: Float64Array): Float64Array =>
    own.map((y, i) => {
      const share = Math.min(1, Math.max(0, (until - query[i]!) / SEAM_S));
      return share === 0 ? y : y + share * (joint[i]! - y);
    });
  const parts = [
    `altitude (± ${altitude.sigma.toPrecision(2)} m)`,
    ...(
      [
        ['speed', speed],
        ['vertical speed', vertical],
        ['horizontal speed', horizontal],
      ] as const
    ).flatMap(([name, channel]) =>
      channel === null ? [] : [`${name} (± ${channel.sigma.toPrecision(2)} m/s)`],
    ),
    ...(placed ? ['position'] : []),
  ];
  const how = `on the way up one motion fitted to the logged ${listed(parts)}, each by its noise (Kalman–RTS smoother, white jerk)`;
  return {
    ...path,
    altitude: sound.altitude ? path.altitude : join(path.altitude, fused.altitude),
    verticalSpeed: sound.vertical ? path.verticalSpeed : join(path.verticalSpeed, fused.verticalSpeed),
    speed: sound.speed ? path.speed : join(path.speed, length),
    verticalSpeedSigma_m_s: sound.vertical
      ? path.verticalSpeedSigma_m_s
      : Math.min(path.verticalSpeedSigma_m_s, meanSquareRoot(fused.verticalSigma, query, until)),
    derivations: path.derivations.map((d) =>
      d.quantity === 'vertical speed' && !sound.vertical ? { ...d, how } : d,
    ),
  };
}

function listed(parts: readonly string[]): string {
  return `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;
}

interface Reading {
  readonly samples: WeighedSamples;
  readonly sigma: number;
}

function isSound(channel: Reading | null): boolean {
  return channel !== null && channel.sigma <= NOISY_M_S;
}

/** Until when the vehicle climbs under its engines and a while after; null where the log shows no burn. */
function wayUp_s(altitude: Float64Array, query: Float64Array, breaks: readonly Break[]): number | null {
  let top = 0;
  for (let i = 1; i < altitude.length; i++) if (altitude[i]! > altitude[top]!) top = i;
  const last = breaks.filter((b) => b.time_s > 0 && b.time_s <= query[top]!).at(-1);
  return last === undefined ? null : Math.min(query[top]!, last.time_s + COAST_S);
}

function reading(log: Log, t: Float64Array, name: ChannelName, until: number): Reading {
  const channel = channelSamples(log, t, name);
  const sigma = sigmaOf(channel);
  const end = channel.samples.t.findIndex((x) => x > until);
  const cut = end === -1 ? channel.samples.t.length : end;
  const own = { t: channel.samples.t.subarray(0, cut), y: channel.samples.y.subarray(0, cut) };
  const variance = channel.stair
    ? edgeVariances(own, channel.step, usualStep_s(t))
    : new Float64Array(cut).fill(Math.max(sigma, 1e-3) ** 2);
  return { samples: { ...own, variance }, sigma };
}

/**
 * The edges of a staircase: the value crossed the middle of two levels somewhere between two rows, which is a
 * uniform error of rate × time between rows; where every row has another level, the mean of two roundings.
 */
function edgeVariances(
  edges: { t: Float64Array; y: Float64Array },
  step: number,
  row_s: number,
): Float64Array {
  const { t, y } = edges;
  const last = t.length - 1;
  return t.map((_, i) => {
    const [a, b] = [Math.max(0, i - 1), Math.min(last, i + 1)];
    const lasted = Math.max(1e-9, t[b]! - t[a]!);
    const moved = (Math.abs(y[b]! - y[a]!) / lasted) * row_s;
    // A display may round more coarsely high up: where levels are held, their distance is the step.
    const own = lasted > 1.5 * (b - a) * row_s ? Math.max(step, Math.abs(y[b]! - y[a]!) / (b - a)) : step;
    // The ends are samples, not edges.
    const width = i === 0 || i === last ? own : Math.min(moved, own / Math.SQRT2);
    return (width * width) / 12 + (EDGE_SHARE * own) ** 2;
  });
}

function usualStep_s(t: Float64Array): number {
  const steps = Float64Array.from(t.subarray(1), (x, i) => x - t[i]!).sort();
  return steps[steps.length >> 1] ?? 1;
}

function meanSquareRoot(sigma: Float64Array, query: Float64Array, until: number): number {
  let sum = 0;
  let n = 0;
  for (let i = 0; i < sigma.length; i++) {
    if (query[i]! <= 0 || query[i]! > until) continue;
    sum += sigma[i]! ** 2;
    n++;
  }
  return Math.sqrt(sum / Math.max(1, n));
}

import type { Flight } from '../flight/types.ts';
import { orbitAt } from '../ledger/ascentEnd.ts';
import { dragAcceleration } from '../ledger/dragAcceleration.ts';
import type { LossCurves } from '../ledger/lossCurves.ts';
import type { Basis, Strip, StripName, Strips } from './types.ts';

const DEG = 180 / Math.PI;

/** The flight's channels for charts and exports; loss rates are of the ground frame. */
export function makeStrips(flight: Flight, ground: LossCurves): Strips {
  const { time, track, mass, gaps, log } = flight;
  const n = time.length;
  const channels: Partial<Record<StripName, Strip>> = {};
  const put = (name: StripName, values: Float64Array | null, basis: Basis): void => {
    if (values !== null) channels[name] = { values, basis };
  };
  const radius = flight.mission.world.radius_m;
  const apoapsis = new Float64Array(n).fill(Number.NaN);
  const periapsis = new Float64Array(n).fill(Number.NaN);
  for (let i = 0; i < n; i++) {
    const orbit = orbitAt(flight, i);
    if (Number.isFinite(orbit.apoapsisRadius_m)) apoapsis[i] = orbit.apoapsisRadius_m - radius;
    periapsis[i] = orbit.periapsisRadius_m - radius;
  }
  put('altitude_m', flight.altitude, 'measured');
  put('apoapsisAltitude_m', apoapsis, 'derived');
  put('periapsisAltitude_m', periapsis, 'derived');
  put('speed_m_s', flight.speed, log.channels.speed ? 'measured' : 'derived');
  put('inertialSpeed_m_s', track.inertialSpeed, 'derived');
  put('verticalSpeed_m_s', flight.verticalSpeed, log.channels.verticalSpeed ? 'measured' : 'derived');
  put('horizontalSpeed_m_s', flight.horizontalSpeed, 'derived');
  put('pitch_deg', flight.pitch?.map((x) => x * DEG) ?? null, 'measured');
  put(
    'flightPathAngle_deg',
    flight.flightPathAngle.map((x) => x * DEG),
    'derived',
  );
  put('angleOfAttack_deg', angleOfAttack(flight), 'derived');
  const directed: Basis = track.reading === 'logged' ? 'measured' : 'assumed';
  put(
    'course_deg',
    track.course.map((x) => (((x * DEG) % 360) + 360) % 360),
    directed,
  );
  put(
    'latitude_deg',
    track.latitude.map((x) => x * DEG),
    directed,
  );
  put(
    'longitude_deg',
    track.longitude.map((x) => x * DEG),
    directed,
  );
  put('downrange_m', downrange(flight), 'derived');
  put('throttle', flight.throttle, 'measured');
  put('mass_kg', mass, log.channels.mass === undefined ? 'derived' : 'measured');
  const air = dragAcceleration(flight);
  if (flight.mission.world.atmosphere !== null) {
    put('dynamicPressure_Pa', flight.dynamicPressure, 'derived');
    put('mach', flight.mach, 'derived');
  }
  if (mass !== null && air !== null)
    put(
      'drag_N',
      air.map((a, i) => a * mass[i]!),
      log.channels.drag ? 'measured' : 'derived',
    );
  if (gaps.known && mass !== null) {
    const push = perPoint(
      time,
      gaps.vacuum.map((v, i) => v - gaps.back[i]!),
    );
    const basis: Basis = log.channels.thrust ? 'measured' : 'derived';
    put(
      'thrust_N',
      push.map((a, i) => a * mass[i]!),
      basis,
    );
    put(
      'thrustToWeight',
      push.map((a, i) => (a * flight.radius[i]! ** 2) / flight.mission.world.mu_m3_s2),
      'derived',
    );
    if (air !== null && flight.pitch !== null) put('acceleration_m_s2', felt(flight, push, air), 'derived');
  }
  put('gravityLossRate_m_s2', rate(time, ground.gravity), 'derived');
  put('dragLossRate_m_s2', rate(time, ground.drag), 'derived');
  put('steeringLossRate_m_s2', rate(time, ground.steering), 'derived');
  put('backPressureLossRate_m_s2', rate(time, ground.backPressure), 'derived');
  // Errors of measured channels, and of the altitude's rate, are the same all along but beside a burn's edge:
  // 95 % lies within 1.96 of one sigma.
  const sigmas: Partial<Record<StripName, number>> = {
    altitude_m: flight.noise.altitude_m,
    speed_m_s: flight.noise.speed_m_s,
    verticalSpeed_m_s: flight.noise.verticalSpeed_m_s,
    pitch_deg: flight.noise.pitch_rad * DEG,
    mass_kg: flight.noise.mass_kg,
  };
  for (const [name, sigma] of Object.entries(sigmas) as [StripName, number][]) {
    const strip = channels[name];
    const known = strip?.basis === 'measured' || name === 'verticalSpeed_m_s';
    if (strip !== undefined && known && sigma > 0) channels[name] = { ...strip, half: 1.96 * sigma };
  }
  put('equationResidual_m_s', flight.identified?.fit.residual ?? null, 'derived');
  return { time_s: time, channels };
}

/** Angle between thrust axis and path, degrees; only where something burns. */
function angleOfAttack(flight: Flight): Float64Array | null {
  const { pitch, flightPathAngle: gamma, track, gaps } = flight;
  if (pitch === null) return null;
  return pitch.map((theta, i) => {
    const lit = gaps.burn[Math.min(i, gaps.burn.length - 1)] !== -1 || (i > 0 && gaps.burn[i - 1] !== -1);
    if (!lit) return Number.NaN;
    const cos =
      Math.sin(theta) * Math.sin(gamma[i]!) +
      Math.cos(theta) * Math.cos(gamma[i]!) * Math.cos(track.heading[i]! - track.course[i]!);
    return Math.acos(Math.max(-1, Math.min(1, cos))) * DEG;
  });
}

/** Arc over the ground from the first point, m. */
function downrange(flight: Flight): Float64Array {
  const { time, horizontalSpeed, radius } = flight;
  const world = flight.mission.world.radius_m;
  const out = new Float64Array(time.length);
  for (let i = 1; i < time.length; i++) {
    const step = (((horizontalSpeed[i - 1]! + horizontalSpeed[i]!) / 2) * world) / radius[i]!;
    out[i] = out[i - 1]! + (Number.isFinite(step) ? step * (time[i]! - time[i - 1]!) : 0);
  }
  return out;
}

/** Mean of the rates in the gaps on both sides of each point, where the gap is wider than a drop's. */
function perPoint(time: Float64Array, gap: Float64Array): Float64Array {
  const n = time.length;
  const out = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const right = i < n - 1 ? time[i + 1]! - time[i]! : 0;
    const left = i > 0 ? time[i]! - time[i - 1]! : 0;
    const r = right > 5e-6 ? gap[i]! / right : null;
    const l = left > 5e-6 ? gap[i - 1]! / left : null;
    // At a burn's edge the powered side speaks.
    out[i] = r === null || r === 0 ? (l ?? 0) : l === null || l === 0 ? r : (l + r) / 2;
    if (r === 0 && l !== null && l > 0 && right > left) out[i] = 0;
  }
  return out;
}

function rate(time: Float64Array, curve: Float64Array | null): Float64Array | null {
  if (curve === null) return null;
  const steps = new Float64Array(Math.max(0, time.length - 1));
  for (let i = 0; i < steps.length; i++) steps[i] = curve[i + 1]! - curve[i]!;
  return perPoint(time, steps);
}

/** Acceleration that a scale aboard would show: thrust and drag together, m/s². */
function felt(flight: Flight, push: Float64Array, air: Float64Array): Float64Array {
  const { pitch, flightPathAngle: gamma, track } = flight;
  return push.map((a, i) => {
    const theta = pitch![i]!;
    const cos =
      Math.sin(theta) * Math.sin(gamma[i]!) +
      Math.cos(theta) * Math.cos(gamma[i]!) * Math.cos(track.heading[i]! - track.course[i]!);
    const d = air[i]!;
    return Math.sqrt(Math.max(0, a * a + d * d - 2 * a * d * cos));
  });
}

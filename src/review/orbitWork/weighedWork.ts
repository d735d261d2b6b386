import { stageName } from '../../flight/events.ts';
import { inertialState, inPlaneState } from '../../flight/inertialState.ts';
import type { Burn, Flight } from '../../flight/types.ts';
import { type OrbitBurn, type OrbitBurnKind, weighOrbitBurn } from '../../orbit/orbitBurn.ts';
import { figure, unavailable } from '../figure.ts';
import { spentFigure, spentIn } from '../spentIn.ts';
import type { Figure } from '../types.ts';
import { decimal, formatKm } from '../wording.ts';
import type { OrbitWorkBurn } from './types.ts';

const DEG = 180 / Math.PI;

/** Least error of a state at a burn's edge, m/s: measured on a computed flight logged to 0.01 m/s. */
const EDGE_SIGMA_M_S = 0.005;

/** Share of a burn that may leave no trace in the orbit's shape before the plane is asked. */
const HIDDEN_SHARE = 0.05;

/** What a burn in orbit did, what it spent and what it would have needed. */
export function weighedWork(flight: Flight, burn: Burn): OrbitWorkBurn {
  const { world } = flight.mission;
  const seen = flight.track.reading === 'logged';
  const weighed = weighOrbitBurn(
    world.mu_m3_s2,
    world.radius_m + world.orbitFloor_m,
    seen ? inertialState(flight, burn.startIndex) : inPlaneState(flight, burn.startIndex, burn.startIndex),
    seen ? inertialState(flight, burn.endIndex) : inPlaneState(flight, burn.startIndex, burn.endIndex),
    burn.end_s - burn.start_s,
  );
  const spent = spentIn(flight, burn);
  // What did not change the orbit's shape may have turned its plane, which such a log cannot show.
  const hidden = !seen && spent !== null && spent - weighed.impulse_m_s > Math.max(1, HIDDEN_SHARE * spent);
  if (hidden) return hiddenWork(flight, burn, weighed, spent);
  // The difference of two states carries the noise of both; the flow that makes `spent` is far surer.
  // A state at a burn's edge leans on one side's samples only, and on where between two rows the edge lies.
  const sigma = Math.SQRT2 * Math.max(flight.noise.speed_m_s, flight.noise.verticalSpeed_m_s, EDGE_SIGMA_M_S);
  const best = weighed.best;
  const optimum =
    best === null
      ? unavailable('the orbit after the burn is open')
      : figure(best.deltaV_m_s, sigma, 'derived');
  const noSpent = 'the engine is not known';
  const share = sigma / Math.max(1, spent ?? 1);
  return {
    start_s: burn.start_s,
    end_s: burn.end_s,
    stage: stageName(flight, burn.stage),
    kind: weighed.kind,
    deltaV_m_s: spentFigure(flight, burn),
    optimum_m_s: optimum,
    efficiency:
      spent === null || best === null || spent === 0
        ? unavailable(spent === null ? noSpent : (optimum.reason ?? 'nothing was spent'))
        : figure(best.deltaV_m_s / spent, share, 'derived'),
    placeLoss_m_s:
      best === null
        ? unavailable(optimum.reason ?? '')
        : figure(weighed.impulse_m_s - best.deltaV_m_s, sigma, 'derived'),
    finiteBurnLoss_m_s:
      spent === null ? unavailable(noSpent) : figure(spent - weighed.impulse_m_s, sigma, 'derived'),
    trueAnomaly_deg: weighed.trueAnomaly_rad === null ? null : weighed.trueAnomaly_rad * DEG,
    bestAt: weighed.trueAnomaly_rad === null ? null : weighed.bestAt,
    twoImpulses: best !== null && Math.min(...best.impulses_m_s) > 0.02 * best.deltaV_m_s,
    planeChange_deg: planeChange(flight, weighed, sigma),
    apoapsisBefore_m: altitudeOf(flight, weighed.before.apoapsisRadius_m),
    periapsisBefore_m: weighed.before.periapsisRadius_m - world.radius_m,
    apoapsisAfter_m: altitudeOf(flight, weighed.after.apoapsisRadius_m),
    periapsisAfter_m: weighed.after.periapsisRadius_m - world.radius_m,
    text: sentence(flight, weighed, spent),
  };
}

/** A burn of which a part left no trace in the shape, in a log without directions. */
function hiddenWork(flight: Flight, burn: Burn, weighed: OrbitBurn, spent: number): OrbitWorkBurn {
  const unseen = unavailable(
    'a turn of the plane would not show in a log without heading, course or position',
  );
  const mostly = weighed.impulse_m_s < 0.3 * spent;
  const rest = decimal(spent - weighed.impulse_m_s, 1);
  return {
    start_s: burn.start_s,
    end_s: burn.end_s,
    stage: stageName(flight, burn.stage),
    kind: mostly ? 'plane-change' : weighed.kind,
    deltaV_m_s: spentFigure(flight, burn),
    optimum_m_s: unseen,
    efficiency: unseen,
    placeLoss_m_s: unseen,
    finiteBurnLoss_m_s: unseen,
    trueAnomaly_deg: weighed.trueAnomaly_rad === null ? null : weighed.trueAnomaly_rad * DEG,
    bestAt: null,
    twoImpulses: false,
    planeChange_deg: unseen,
    apoapsisBefore_m: altitudeOf(flight, weighed.before.apoapsisRadius_m),
    periapsisBefore_m: weighed.before.periapsisRadius_m - flight.mission.world.radius_m,
    apoapsisAfter_m: altitudeOf(flight, weighed.after.apoapsisRadius_m),
    periapsisAfter_m: weighed.after.periapsisRadius_m - flight.mission.world.radius_m,
    text: `${decimal(spent, 1)} m/s spent, ${rest} m/s of it without a trace in the orbit’s shape: a turn of the plane, which this log cannot show, or thrust against itself.`,
  };
}

function planeChange(flight: Flight, weighed: OrbitBurn, sigma: number): Figure {
  if (flight.track.reading !== 'logged') return unavailable('the log has neither course nor position');
  const speed = Math.sqrt(flight.mission.world.mu_m3_s2 / weighed.before.semiMajorAxis_m);
  return figure(weighed.planeAngle_rad * DEG, (sigma / speed) * DEG, 'derived');
}

function altitudeOf(flight: Flight, radius_m: number): number | null {
  return Number.isFinite(radius_m) ? radius_m - flight.mission.world.radius_m : null;
}

const verbs: Readonly<Record<OrbitBurnKind, string>> = {
  raise: 'Raised',
  lower: 'Lowered',
  circularise: 'Circularised',
  'plane-change': 'Plane turned',
  deorbit: 'Deorbited',
  trim: 'Trimmed',
  escape: 'Left',
};

function sentence(flight: Flight, weighed: OrbitBurn, spent: number | null): string {
  const radius = flight.mission.world.radius_m;
  const shape = (o: OrbitBurn['before']): string =>
    Number.isFinite(o.apoapsisRadius_m)
      ? `${formatKm(o.apoapsisRadius_m - radius, false)} × ${formatKm(o.periapsisRadius_m - radius)}`
      : 'an open path';
  const turned = weighed.kind === 'plane-change' ? ` by ${decimal(weighed.planeAngle_rad * DEG, 2)}°` : '';
  const head = `${verbs[weighed.kind]}${turned} from ${shape(weighed.before)} to ${shape(weighed.after)}`;
  if (weighed.best === null || spent === null) return `${head}.`;
  const best = weighed.best;
  const away = weighed.trueAnomaly_rad;
  const distance =
    away === null
      ? ''
      : `, ${decimal(Math.abs(weighed.bestAt === 'periapsis' ? away : Math.PI - Math.abs(away)) * DEG, 0)}° from ${weighed.bestAt}, where it is cheapest`;
  return `${head}: ${decimal(spent, 1)} m/s spent, ${decimal(best.deltaV_m_s, 1)} m/s needed${distance}.`;
}

import { staysInAir } from '../../flight/peakAltitude.ts';
import type { Flight } from '../../flight/types.ts';
import { allenEggersPeak } from '../../flight/wayDown/allenEggers.ts';
import type { Entry, Peak } from '../../flight/wayDown/entry.ts';
import { heatFlux_W_m2, heatingConstant } from '../../flight/wayDown/heating.ts';
import { figure, figureBetween, unavailable } from '../figure.ts';
import type { Figure } from '../types.ts';
import type { EntryReview, PeakFigure } from './types.ts';

const DEG = 180 / Math.PI;

/** The entry's figures. */
export function entryReview(flight: Flight, entry: Entry): EntryReview {
  const { noise, mission, time } = flight;
  const body = mission.returnVehicle;
  const noseRadius_m = body?.noseRadius_m ?? null;
  const constant = heatingConstant(mission.world);
  const speedShare = noise.speed_m_s / Math.max(1, entry.dynamicPressure.speed_m_s);
  // The air's density follows the altitude by its scale height.
  const densityShare = noise.altitude_m / scaleHeight_m(flight, entry.dynamicPressure.altitude_m);
  const pressureSigma = entry.dynamicPressure.value * Math.hypot(2 * speedShare, densityShare);
  const heatFactor =
    constant === null || noseRadius_m === null ? null : heatFlux_W_m2(constant, 1, 1, noseRadius_m);
  const noHeat = unavailable(
    noseRadius_m === null
      ? 'no nose radius is given; the time and place of the peak need none'
      : 'the constant of this world’s gas is not known; the time and place of the peak need none',
  );
  return {
    start_s: time[entry.from]!,
    end_s: time[entry.to]!,
    speed_m_s: figure(entry.speed_m_s, noise.speed_m_s, 'measured'),
    angle_deg: figure(
      entry.angle_rad * DEG,
      (noise.verticalSpeed_m_s / Math.max(1, entry.speed_m_s)) * DEG,
      'derived',
    ),
    peakDeceleration_m_s2: peak(
      entry.deceleration,
      figure(entry.deceleration.value, entry.decelerationSigma_m_s2, 'derived'),
    ),
    allenEggers_m_s2: expected(flight, entry),
    peakDynamicPressure_Pa: peak(
      entry.dynamicPressure,
      figure(entry.dynamicPressure.value, pressureSigma, 'derived'),
    ),
    peakHeatFlux_W_m2: peak(
      entry.heating,
      heatFactor === null
        ? noHeat
        : figure(
            heatFactor * entry.heating.value,
            heatFactor * entry.heating.value * Math.hypot(3 * speedShare, densityShare / 2),
            'derived',
          ),
    ),
    heatLoad_J_m2: heatFactor === null ? noHeat : figure(heatFactor * entry.heatingIntegral, 0, 'derived'),
    noseRadius_m,
    heatingConstant: constant,
    ballisticCoefficient_kg_m2: coefficient(entry),
    cardBallisticCoefficient_kg_m2:
      body !== null && body.mass_kg !== null && body.referenceArea_m2 && body.dragCoefficient
        ? body.mass_kg / (body.referenceArea_m2 * body.dragCoefficient)
        : null,
  };
}

function peak(at: Peak, f: Figure): PeakFigure {
  return { figure: f, time_s: at.time_s, altitude_m: at.altitude_m, speed_m_s: at.speed_m_s };
}

function coefficient(entry: Entry): Figure {
  const { drag } = entry;
  if (drag === null || !(drag.value_m2_kg > 0)) return unavailable('the air took too little speed to tell');
  const half = 1.959964 * drag.sigma_m2_kg;
  const value = 1 / drag.value_m2_kg;
  return half < drag.value_m2_kg
    ? figureBetween(value, 1 / (drag.value_m2_kg + half), 1 / (drag.value_m2_kg - half), 'identified')
    : unavailable('the air took too little speed to tell');
}

/** Local scale height of the air, m. */
function scaleHeight_m(flight: Flight, altitude_m: number): number {
  const air = flight.mission.world.atmosphere!;
  const low = air.at(Math.max(0, altitude_m - 1000)).density_kg_m3;
  const high = air.at(Math.max(0, altitude_m - 1000) + 2000).density_kg_m3;
  return low > high && high > 0 ? 2000 / Math.log(low / high) : 8000;
}

/** Below this the straight path of the formula is not the one flown (Allen & Eggers 1958 ask for steep ones). */
const LEAST_ANGLE_RAD = (5 * Math.PI) / 180;

function expected(flight: Flight, entry: Entry): Figure {
  // The formula comes from outside, where there is no air yet.
  if (staysInAir(flight)) return unavailable('the fall began within the air');
  if (entry.angle_rad < LEAST_ANGLE_RAD)
    return unavailable('the path is too level: gravity and the round world bend it on the way');
  const H = scaleHeight_m(flight, entry.deceleration.altitude_m);
  const { deceleration_m_s2 } = allenEggersPeak(entry.speed_m_s, entry.angle_rad, H, 1, 1);
  return figure(deceleration_m_s2, 0, 'assumed');
}

import type { Air, World } from '../world/types.ts';

/** What the air is along the path, and what the path makes of it. */
export interface AirAlongPath {
  readonly pressure: Float64Array;
  readonly density: Float64Array;
  readonly dynamicPressure: Float64Array;
  readonly mach: Float64Array;
}

/** Pressure, density, q = ½ρv² and Mach number at each point; all zero on a world without air. */
export function airAlongPath(world: World, altitude: Float64Array, speed: Float64Array): AirAlongPath {
  const n = altitude.length;
  const out: AirAlongPath = {
    pressure: new Float64Array(n),
    density: new Float64Array(n),
    dynamicPressure: new Float64Array(n),
    mach: new Float64Array(n),
  };
  const model = world.atmosphere;
  if (model === null) return out;
  const air: Air = { temperature_K: 0, pressure_Pa: 0, density_kg_m3: 0, soundSpeed_m_s: 0 };
  for (let i = 0; i < n; i++) {
    model.at(altitude[i]!, air);
    out.pressure[i] = air.pressure_Pa;
    out.density[i] = air.density_kg_m3;
    out.dynamicPressure[i] = 0.5 * air.density_kg_m3 * speed[i]! * speed[i]!;
    out.mach[i] = air.soundSpeed_m_s > 0 ? speed[i]! / air.soundSpeed_m_s : 0;
  }
  return out;
}

/** What is told of a cutoff: field, name, unit it is written in, factor to that unit, decimals. */
export const cutoffStates = [
  ['time_s', 'time', 's', 1, 1],
  ['altitude_m', 'altitude', 'km', 1e-3, 1],
  ['speed_m_s', 'speed', 'm/s', 1, 0],
  ['inertialSpeed_m_s', 'inertial speed', 'm/s', 1, 0],
  ['flightPathAngle_deg', 'flight-path angle', '°', 1, 2],
  ['apoapsisAltitude_m', 'apoapsis', 'km', 1e-3, 1],
  ['periapsisAltitude_m', 'periapsis', 'km', 1e-3, 1],
  ['mass_kg', 'mass', 'kg', 1, 0],
] as const;

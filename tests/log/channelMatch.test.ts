import { describe, expect, test } from 'vitest';
import { channelMatches } from '../../src/log/channelMatch.ts';

/** The best reading of a header as `channel unit`. */
function best(header: string, units: string | null = null): string {
  const [match] = channelMatches(header, units).sort((a, b) => b.confidence - a.confidence);
  return match === undefined ? '' : `${match.channel} ${match.unit?.spelling ?? '?'}`;
}

describe('headers of many makes', () => {
  test.each([
    ['Altitude [ft]', 'altitude ft'],
    ['ALT_MSL', 'altitude ?'],
    ['alt (km)', 'altitude km'],
    ['Alt(ft)', 'altitude ft'],
    ['altitudeKm', 'altitude km'],
    ['altitude, m', 'altitude m'],
    ['h / km', 'altitude km'],
    ['GPS altitude', 'altitude ?'],
    ['высота, км', 'altitude km'],
    ['speed_kmh', 'speed km/h'],
    ['vel_mps', 'speed m/s'],
    ['Velocity Magnitude (m/s)', 'speed m/s'],
    ['speed over ground', 'speed ?'],
    ['surface velocity', 'speed ?'],
    ['velocity m s^-1', 'speed m/s'],
    ['Inertial velocity (km/s)', 'inertialSpeed km/s'],
    ['orbital_velocity', 'inertialSpeed ?'],
    ['vertical_speed_m_s', 'verticalSpeed m/s'],
    ['verticalspeed', 'verticalSpeed ?'],
    ['Rate of climb (ft/min)', 'verticalSpeed ft/min'],
    ['hdot', 'verticalSpeed ?'],
    ['Horizontal velocity', 'horizontalSpeed ?'],
    ['time_s', 'time s'],
    ['time_ms', 'time ms'],
    ['T+', 'time ?'],
    ['Mission Elapsed Time (s)', 'time s'],
    ['Time since liftoff [s]', 'time s'],
    ['mass_kg', 'mass kg'],
    ['Vehicle Mass (t)', 'mass t'],
    ['Propellant mass remaining (kg)', 'propellantMass kg'],
    ['pitch_deg', 'pitch °'],
    ['Throttle %', 'throttle %'],
    ['thrust (lbf)', 'thrust lbf'],
    ['Drag force N', 'drag N'],
    ['dynamic_pressure_Pa', 'dynamicPressure Pa'],
    ['Q [kPa]', 'dynamicPressure kPa'],
    ['pressure_Pa', 'ambientPressure Pa'],
    ['Static pressure (hPa)', 'ambientPressure hPa'],
    ['acceleration_m_s2', 'acceleration m/s2'],
    ['G-Force', 'acceleration ?'],
    ['Flight Path Angle (deg)', 'flightPathAngle °'],
    ['AoA', 'angleOfAttack ?'],
    ['Heading (true)', 'heading ?'],
    ['Ground track (deg)', 'course °'],
    ['Latitude', 'latitude ?'],
    ['Lon.', 'longitude ?'],
    ['Downrange distance (km)', 'downrange km'],
    ['Temp C', 'temperature °C'],
    ['Mach number', 'mach ?'],
    ['Apogee (km)', 'apoapsisAltitude km'],
    ['periapsis_altitude_m', 'periapsisAltitude m'],
    ['Velocity_x(m/s)', 'velocityX m/s'],
    ['pos_z', 'positionZ ?'],
    ['Stage #', 'stage 1'],
    ['phase', 'event ?'],
    ['Geschwindigkeit [m/s]', 'speed m/s'],
    ['vitesse', 'speed ?'],
  ])('%s is %s', (header, wanted) => {
    expect(best(header)).toBe(wanted);
  });

  test.each([
    'chamber_pressure_Pa',
    'tank pressure',
    'altitude_error_m',
    'target altitude',
    'pitch_rate_deg_s',
    'Mass flow (kg/s)',
    'thrust-to-weight',
    'vertical acceleration',
    'dry mass',
    'battery_voltage',
    'seq',
    'max q',
    '',
    '\u001b[2J',
  ])('%j is no channel', (header) => {
    expect(best(header)).toBe('');
  });

  test('a units row gives the unit, and speaks against a channel of another quantity', () => {
    expect(best('Altitude', '(ft)')).toBe('altitude ft');
    expect(channelMatches('range', 'deg')[0]?.confidence).toBeLessThan(0.6);
  });
});

const JULIAN_DATE_OF_UNIX_ZERO = 2440587.5;
const JULIAN_DATE_J2000 = 2451545;
const DAYS_A_CENTURY = 36525;
const DAY_S = 86400;

/**
 * Greenwich mean sidereal angle, rad from 0 to 2π: how far Earth's zero meridian stands east of the mean equinox of
 * date. Source: Aoki and others 1982 (the IAU 1982 model), as in Vallado 2013, eq. 3-47.
 * @param unix_s UT1 as UNIX time; UTC in its place turns the result by up to 14 arc seconds (0.9 s)
 */
export function greenwichMeanSiderealAngle_rad(unix_s: number): number {
  const date = unix_s / DAY_S + JULIAN_DATE_OF_UNIX_ZERO;
  const T = (date - JULIAN_DATE_J2000) / DAYS_A_CENTURY;
  // The whole turns of 876,600 h a century are taken off before they cost digits: a day is a turn.
  const slow_s = 67310.54841 + 8640184.812866 * T + 0.093104 * T * T - 6.2e-6 * T * T * T;
  // 876,600 h × T is one turn for each day since J2000, which falls at noon.
  const turn = (((unix_s % DAY_S) + DAY_S) % DAY_S) / DAY_S - 0.5;
  const share = (slow_s / DAY_S + turn) % 1;
  return 2 * Math.PI * (share < 0 ? share + 1 : share);
}

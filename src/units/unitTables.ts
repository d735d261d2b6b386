import type { Quantity } from './quantity.ts';
import { STANDARD_GRAVITY_M_S2 } from './standardGravity.ts';

/** One unit: the spellings it is known by (the first is shown) and SI = written × factor + offset. */
export interface UnitRow {
  readonly spellings: readonly string[];
  readonly factor: number;
  readonly offset?: number;
}

// Exact by definition: NIST SP 811 (2008), appendix B.8 and footnotes. International foot 1959.
const FOOT_M = 0.3048;
const INCH_M = FOOT_M / 12;
const MILE_M = 1609.344;
const NAUTICAL_MILE_M = 1852;
const POUND_KG = 0.45359237;
const POUND_FORCE_N = 4.4482216152605;
const HOUR_S = 3600;
const ATMOSPHERE_PA = 101325;
const POUND_FORCE_PER_SQUARE_INCH_PA = POUND_FORCE_N / INCH_M ** 2;
const POUND_FORCE_PER_SQUARE_FOOT_PA = POUND_FORCE_N / FOOT_M ** 2;
const SLUG_KG = POUND_FORCE_N / FOOT_M;
const DEGREE_RAD = Math.PI / 180;

/**
 * The units of each quantity, the SI unit first. Factors are exact where the definition is; mmHg and inHg are
 * the conventional ones (SP 811 B.8). A spelling may stand in several quantities (`%`, `g`), not twice in one.
 */
export const unitTables: Readonly<Record<Quantity, readonly UnitRow[]>> = {
  time: [
    { spellings: ['s', 'sec', 'secs', 'second', 'seconds'], factor: 1 },
    { spellings: ['ms', 'msec', 'millis', 'millisecond', 'milliseconds'], factor: 1e-3 },
    { spellings: ['µs', 'us', 'usec', 'micros', 'microsecond', 'microseconds'], factor: 1e-6 },
    { spellings: ['ns', 'nanosecond', 'nanoseconds'], factor: 1e-9 },
    { spellings: ['min', 'mins', 'minute', 'minutes'], factor: 60 },
    { spellings: ['h', 'hr', 'hrs', 'hour', 'hours'], factor: HOUR_S },
    { spellings: ['d', 'day', 'days'], factor: 86400 },
  ],
  length: [
    { spellings: ['m', 'meter', 'meters', 'metre', 'metres', 'm MSL', 'm AGL', 'm ASL'], factor: 1 },
    { spellings: ['km', 'kilometer', 'kilometers', 'kilometre', 'kilometres', 'kms'], factor: 1000 },
    { spellings: ['Mm', 'megameter', 'megameters', 'megametre', 'megametres'], factor: 1e6 },
    { spellings: ['cm', 'centimeter', 'centimeters', 'centimetre', 'centimetres'], factor: 0.01 },
    { spellings: ['mm', 'millimeter', 'millimeters', 'millimetre', 'millimetres'], factor: 0.001 },
    { spellings: ['ft', 'foot', 'feet', 'ft MSL', 'ft AGL', 'ft ASL'], factor: FOOT_M },
    { spellings: ['kft', 'kilofeet', 'kilofoot'], factor: 1000 * FOOT_M },
    { spellings: ['in', 'inch', 'inches'], factor: INCH_M },
    { spellings: ['yd', 'yard', 'yards'], factor: 3 * FOOT_M },
    { spellings: ['mi', 'mile', 'miles', 'statute mile', 'statute miles', 'sm'], factor: MILE_M },
    {
      spellings: ['nmi', 'NM', 'nm', 'n mi', 'naut mi', 'nautical mile', 'nautical miles'],
      factor: NAUTICAL_MILE_M,
    },
  ],
  speed: [
    {
      spellings: ['m/s', 'mps', 'm/sec', 'ms-1', 'm per s', 'meters per second', 'metres per second'],
      factor: 1,
    },
    { spellings: ['km/s', 'kps', 'km/sec', 'kilometers per second', 'kilometres per second'], factor: 1000 },
    {
      spellings: ['km/h', 'kph', 'kmh', 'kmph', 'km/hr', 'kilometers per hour', 'kilometres per hour'],
      factor: 1000 / HOUR_S,
    },
    { spellings: ['cm/s'], factor: 0.01 },
    { spellings: ['mm/s'], factor: 0.001 },
    { spellings: ['m/min', 'mpm'], factor: 1 / 60 },
    { spellings: ['ft/s', 'fps', 'ft/sec', 'feet per second'], factor: FOOT_M },
    { spellings: ['kft/s', 'kfps'], factor: 1000 * FOOT_M },
    { spellings: ['ft/min', 'fpm', 'feet per minute'], factor: FOOT_M / 60 },
    { spellings: ['mph', 'mi/h', 'mi/hr', 'miles per hour'], factor: MILE_M / HOUR_S },
    { spellings: ['mi/s'], factor: MILE_M },
    {
      spellings: ['kn', 'kt', 'kts', 'knot', 'knots', 'nmi/h', 'KTAS', 'KIAS'],
      factor: NAUTICAL_MILE_M / HOUR_S,
    },
  ],
  angle: [
    { spellings: ['rad', 'radian', 'radians'], factor: 1 },
    { spellings: ['°', 'deg', 'degs', 'degree', 'degrees', 'deg.'], factor: DEGREE_RAD },
    { spellings: ['mrad', 'milliradian', 'milliradians'], factor: 1e-3 },
    { spellings: ['gon', 'grad', 'grads', 'gradian', 'gradians'], factor: Math.PI / 200 },
    { spellings: ["'", 'arcmin', 'arcminute', 'arcminutes'], factor: DEGREE_RAD / 60 },
    { spellings: ['"', 'arcsec', 'arcsecond', 'arcseconds'], factor: DEGREE_RAD / 3600 },
    { spellings: ['rev', 'turn', 'turns', 'revolution', 'revolutions'], factor: 2 * Math.PI },
    // Whole degrees × 10⁷, as satellite receivers write positions.
    { spellings: ['degE7', '1e-7 deg', 'deg x 1e7'], factor: DEGREE_RAD * 1e-7 },
  ],
  mass: [
    { spellings: ['kg', 'kgs', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes'], factor: 1 },
    { spellings: ['g', 'gram', 'grams', 'gramme', 'grammes'], factor: 1e-3 },
    { spellings: ['t', 'Mg', 'tonne', 'tonnes', 'metric ton', 'metric tons', 'mt'], factor: 1000 },
    { spellings: ['lb', 'lbs', 'lbm', 'pound', 'pounds'], factor: POUND_KG },
    { spellings: ['klb', 'klbs', 'klbm'], factor: 1000 * POUND_KG },
    { spellings: ['oz', 'ounce', 'ounces'], factor: POUND_KG / 16 },
    { spellings: ['slug', 'slugs'], factor: SLUG_KG },
    { spellings: ['short ton', 'short tons', 'ton (short)', 'US ton', 'US tons'], factor: 2000 * POUND_KG },
    { spellings: ['long ton', 'long tons', 'ton (long)', 'UK ton', 'UK tons'], factor: 2240 * POUND_KG },
  ],
  force: [
    { spellings: ['N', 'newton', 'newtons'], factor: 1 },
    { spellings: ['kN', 'kilonewton', 'kilonewtons'], factor: 1000 },
    { spellings: ['MN', 'meganewton', 'meganewtons'], factor: 1e6 },
    { spellings: ['lbf', 'lb', 'lbs', 'pound-force', 'pounds-force', 'pounds'], factor: POUND_FORCE_N },
    { spellings: ['klbf', 'kip', 'kips', 'kilopound-force'], factor: 1000 * POUND_FORCE_N },
    {
      spellings: ['kgf', 'kp', 'kilogram-force', 'kilograms-force', 'kilopond'],
      factor: STANDARD_GRAVITY_M_S2,
    },
    {
      spellings: ['tf', 'tonf', 'tonne-force', 'tonnes-force', 'ton-force'],
      factor: 1000 * STANDARD_GRAVITY_M_S2,
    },
    { spellings: ['dyn', 'dyne', 'dynes'], factor: 1e-5 },
  ],
  pressure: [
    { spellings: ['Pa', 'pascal', 'pascals', 'N/m2', 'N m-2'], factor: 1 },
    { spellings: ['hPa', 'hectopascal', 'hectopascals'], factor: 100 },
    { spellings: ['kPa', 'kilopascal', 'kilopascals', 'kN/m2'], factor: 1000 },
    { spellings: ['MPa', 'megapascal', 'megapascals'], factor: 1e6 },
    { spellings: ['bar', 'bars'], factor: 1e5 },
    { spellings: ['mbar', 'mb', 'millibar', 'millibars'], factor: 100 },
    { spellings: ['atm', 'atmosphere', 'atmospheres'], factor: ATMOSPHERE_PA },
    { spellings: ['N/cm2', 'N cm-2'], factor: 1e4 },
    { spellings: ['N/mm2'], factor: 1e6 },
    { spellings: ['psi', 'psia', 'lbf/in2', 'lb/in2', 'lbs/in2'], factor: POUND_FORCE_PER_SQUARE_INCH_PA },
    { spellings: ['psf', 'lbf/ft2', 'lb/ft2', 'lbs/ft2'], factor: POUND_FORCE_PER_SQUARE_FOOT_PA },
    { spellings: ['kgf/m2'], factor: STANDARD_GRAVITY_M_S2 },
    { spellings: ['kgf/cm2', 'at'], factor: 1e4 * STANDARD_GRAVITY_M_S2 },
    { spellings: ['Torr', 'torr'], factor: ATMOSPHERE_PA / 760 },
    { spellings: ['mmHg', 'mm Hg'], factor: 133.322387415 },
    { spellings: ['inHg', 'in Hg'], factor: 25.4 * 133.322387415 },
    { spellings: ['dyn/cm2'], factor: 0.1 },
  ],
  acceleration: [
    {
      spellings: ['m/s2', 'm/s/s', 'm/sec2', 'mps2', 'm/sec/sec', 'ms-2', 'meters per second squared'],
      factor: 1,
    },
    { spellings: ['g', 'g0', 'gee', 'gees', 'gs', "g's", 'G'], factor: STANDARD_GRAVITY_M_S2 },
    { spellings: ['mg', 'milli-g'], factor: STANDARD_GRAVITY_M_S2 / 1000 },
    { spellings: ['ft/s2', 'ft/s/s', 'ft/sec2', 'fps2'], factor: FOOT_M },
    { spellings: ['km/s2'], factor: 1000 },
    { spellings: ['cm/s2', 'Gal'], factor: 0.01 },
  ],
  temperature: [
    { spellings: ['K', 'kelvin', 'kelvins', '°K', 'deg K', 'degK'], factor: 1 },
    {
      spellings: ['°C', 'C', 'deg C', 'degC', 'celsius', 'degrees C', 'degrees celsius', 'centigrade'],
      factor: 1,
      offset: 273.15,
    },
    {
      spellings: ['°F', 'F', 'deg F', 'degF', 'fahrenheit', 'degrees F', 'degrees fahrenheit'],
      factor: 5 / 9,
      offset: 459.67 * (5 / 9),
    },
    { spellings: ['°R', 'R', 'deg R', 'degR', 'rankine', 'degrees R'], factor: 5 / 9 },
  ],
  ratio: [
    {
      spellings: ['1', '-', 'fraction', 'ratio', 'none', 'Mach', 'M', 'n/a', 'unitless', 'dimensionless'],
      factor: 1,
    },
    { spellings: ['%', 'percent', 'per cent', 'pct', 'pc'], factor: 0.01 },
    { spellings: ['‰', 'permille', 'per mille'], factor: 0.001 },
  ],
  count: [{ spellings: ['1', '-', '#', 'count', 'number', 'none'], factor: 1 }],
  text: [],
};

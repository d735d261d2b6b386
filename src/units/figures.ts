/** Figures written for people: thousands separated by a comma, a true minus sign, sensible digits. */

/** U+2212, the minus sign of figures; the hyphen belongs to words. */
const MINUS = '−';

/** What stands where there is no figure. */
export const NO_FIGURE = '—';

/** How a figure is written. */
export interface FigureStyle {
  /** Significant digits for the part after the point; whole digits are never rounded away. Default 4. */
  readonly digits?: number;
  /** Digits after the point, exactly; over `digits`. */
  readonly decimals?: number;
  /** A plus sign before what is above zero (differences). */
  readonly signed?: boolean;
}

/** A count and what is counted: `1 row`, `2,146 rows`. */
export function counted(count: number, one: string, many: string): string {
  return `${formatFigure(count, { decimals: 0 })} ${count === 1 ? one : many}`;
}

/** Digits after the point that leave `digits` significant ones. */
function decimalsFor(size: number, digits: number): number {
  if (size === 0) return 0;
  const before = Math.floor(Math.log10(size)) + 1;
  return Math.min(Math.max(digits - before, 0), 12);
}

/**
 * A number for people: `5541.2` → `5,541`, `-0.02537` → `−0.02537`. What rounds to zero is `0` without a sign;
 * trailing zeros go unless `decimals` asks for them; from 10¹⁵ up, and for what is not zero but under 10⁻⁶ in
 * full, powers of ten are written (`3.2×10⁻⁸`). Not a finite number: `—`.
 */
export function formatFigure(value: number, style: FigureStyle = {}): string {
  if (!Number.isFinite(value)) return NO_FIGURE;
  const { digits = 4, decimals, signed = false } = style;
  const size = Math.abs(value);
  const sign = (text: string) => {
    if (!/[1-9]/u.test(text)) return text;
    if (value < 0) return `${MINUS}${text}`;
    return signed ? `+${text}` : text;
  };
  if (decimals === undefined && size !== 0 && (size >= 1e15 || size < 1e-6)) {
    const [mantissa = '', power = ''] = size.toExponential(Math.max(digits - 1, 0)).split('e');
    return sign(`${trimZeros(mantissa)}×10${superscript(Number(power))}`);
  }
  const text = size.toFixed(decimals ?? decimalsFor(size, digits));
  const [whole = '', part] = (decimals === undefined ? trimZeros(text) : text).split('.');
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/gu, ',');
  return sign(part === undefined ? grouped : `${grouped}.${part}`);
}

function trimZeros(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/u, '') : text;
}

function superscript(power: number): string {
  return [...String(power)].map((c) => (c === '-' ? '⁻' : ('⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(c)] ?? ''))).join('');
}

/** A length in m below 10 km, in km from there: `8,420 m`, `200 km`, `6,578.1 km`. */
export function formatLength_m(length_m: number, style: FigureStyle = {}): string {
  if (!Number.isFinite(length_m)) return NO_FIGURE;
  if (Math.abs(length_m) < 1e4)
    return `${formatFigure(length_m, { decimals: decimalsFor(Math.abs(length_m), 3), ...style })} m`;
  const km = length_m / 1000;
  return `${formatFigure(km, { digits: Math.abs(km) < 1000 ? 4 : 5, ...style })} km`;
}

/** A pressure in Pa below 1 kPa, in kPa from there: `36.01 kPa`. */
export function formatPressure_Pa(pressure_Pa: number, style: FigureStyle = {}): string {
  if (!Number.isFinite(pressure_Pa)) return NO_FIGURE;
  return Math.abs(pressure_Pa) < 1000
    ? `${formatFigure(pressure_Pa, style)} Pa`
    : `${formatFigure(pressure_Pa / 1000, style)} kPa`;
}

/**
 * A span of time: `0.35 s`, `123 s`, from 10 min `12 min 05 s`, from 2 h `3 h 20 min`, from 2 d `2 d 4 h`.
 */
export function formatDuration(duration_s: number): string {
  if (!Number.isFinite(duration_s)) return NO_FIGURE;
  const size = Math.abs(duration_s);
  const sign = duration_s < 0 ? MINUS : '';
  if (size < 600) return `${formatFigure(duration_s, { digits: 3 })} s`;
  const two = (n: number) => String(n).padStart(2, '0');
  const seconds = Math.round(size);
  if (seconds < 7200) return `${sign}${Math.floor(seconds / 60)} min ${two(seconds % 60)} s`;
  const minutes = Math.round(size / 60);
  if (minutes < 2880) return `${sign}${Math.floor(minutes / 60)} h ${two(minutes % 60)} min`;
  const hours = Math.round(size / 3600);
  return `${sign}${formatFigure(Math.floor(hours / 24))} d ${hours % 24} h`;
}

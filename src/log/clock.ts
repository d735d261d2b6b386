/** A clock text taken apart. */
export interface ClockReading {
  /** s; for a date the UNIX time, for a time of day or of mission the seconds since its zero. */
  readonly seconds: number;
  readonly kind: 'date' | 'clock';
}

const countdown = /^(?:[TLM]\s*)?([+-])?\s*/u;
const clock = /^(?:(\d+)\s*(?:d|days?)?[\s:,]+)?(\d+):(\d{1,2}):(\d{1,2}(?:[.,]\d+)?)$/iu;
const minutesClock = /^(\d+):(\d{1,2}(?:[.,]\d+)?)$/u;
const spelled =
  /^(?:(\d+(?:\.\d+)?)\s*h\w*\s*)?(?:(\d+(?:\.\d+)?)\s*m(?:in)?\w*\s*)?(?:(\d+(?:\.\d+)?)\s*s\w*)?$/iu;
const isoDate =
  /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})(?:[T\s]+(\d{1,2}):(\d{2})(?::(\d{2}(?:[.,]\d+)?))?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?$/iu;
const dayOfYear = /^(\d{4})-(\d{3})T(\d{2}):(\d{2}):(\d{2}(?:[.,]\d+)?)Z?$/iu;
const otherDate = /^\d{1,2}[./-]\d{1,2}[./-]\d{2,4}[T,\s]+(.+)$/u;

/**
 * Reads `hh:mm:ss.sss`, `mm:ss`, `T+12.3`, `T-00:00:10`, `1h 2m 3s`, ISO 8601 dates (ordinal ones too) and
 * times of day behind other dates; null for anything else. `mm:ss` is taken for minutes and seconds.
 */
export function readClock(cell: string): ClockReading | null {
  const text = cell
    .trim()
    .replace(/^\[(.*)\]$/u, '$1')
    .replace(/[−–]/gu, '-');
  if (text.length > 48 || !/\d/u.test(text)) return null;
  const date = readDate(text);
  if (date !== null) return { seconds: date, kind: 'date' };
  const day = otherDate.exec(text)?.[1];
  if (day !== undefined) return readClock(day);
  const sign = countdown.exec(text);
  const body = text.slice(sign?.[0].length ?? 0).replace(/\s*(?:utc|gmt|z)$/iu, '');
  const half = /^(.*?)\s*([ap])\.?m\.?$/iu.exec(body);
  const seconds = readUnsigned(half?.[1] ?? body);
  if (seconds === null) return null;
  const hours =
    half === null ? 0 : ((half[2] ?? '').toLowerCase() === 'p' ? 12 : 0) - (seconds >= 43200 ? 12 : 0);
  return { seconds: (sign?.[1] === '-' ? -1 : 1) * (seconds + 3600 * hours), kind: 'clock' };
}

const number = (text: string | undefined): number => Number((text ?? '0').replace(',', '.'));

function readUnsigned(text: string): number | null {
  if (/^\d+(?:[.,]\d+)?$/u.test(text)) return number(text);
  const full = clock.exec(text);
  if (full !== null)
    return number(full[1]) * 86400 + number(full[2]) * 3600 + number(full[3]) * 60 + number(full[4]);
  const short = minutesClock.exec(text);
  if (short !== null) return number(short[1]) * 60 + number(short[2]);
  const words = spelled.exec(text);
  if (words === null || text.trim() === '') return null;
  return number(words[1]) * 3600 + number(words[2]) * 60 + number(words[3]);
}

function readDate(text: string): number | null {
  const ordinal = dayOfYear.exec(text);
  if (ordinal !== null) {
    const [, year, day, hour, minute, second] = ordinal;
    return Date.UTC(Number(year), 0, Number(day), Number(hour), Number(minute)) / 1000 + number(second);
  }
  const parts = isoDate.exec(text);
  if (parts === null) return null;
  const [, year, month, day, hour, minute, second, zone] = parts;
  const offset = /^([+-])(\d{2}):?(\d{2})$/u.exec(zone ?? '');
  const ahead =
    offset === null ? 0 : (offset[1] === '-' ? -1 : 1) * (Number(offset[2]) * 3600 + Number(offset[3]) * 60);
  const whole =
    Date.UTC(Number(year), Number(month) - 1, Number(day), Number(hour ?? 0), Number(minute ?? 0)) / 1000;
  return whole + number(second) - ahead;
}

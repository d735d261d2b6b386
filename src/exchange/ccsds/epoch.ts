import { readClock } from '../../log/clock.ts';

/** When time zero was, as far as a card's date tells it. */
export interface Epoch {
  /** Time zero as UNIX time, s. */
  readonly unix_s: number;
  /** `clock` = date and time of day are given, `day` = only the date, `made-up` = neither. */
  readonly known: 'clock' | 'day' | 'made-up';
  /** What a reader of the file must know about its epochs. */
  readonly remark: string;
}

/** Stands in where a flight has no date. */
const MADE_UP_UNIX_S = Date.UTC(2000, 0, 1) / 1000;
const TIME_OF_DAY = /[T\s]\d{1,2}:\d{2}/u;
const ZONE = /(?:Z|UTC|GMT|[+-]\d{2}:?\d{2})\s*$/iu;

/** The epoch of time zero from the card's `flight.date`; ISO 8601 is read, ordinal dates too. */
export function epochOfTimeZero(date: string | null): Epoch {
  const read = date === null ? null : readClock(date);
  if (date === null || read === null || read.kind !== 'date' || !Number.isFinite(read.seconds)) {
    const why = date === null ? 'the flight has no date' : 'the flight’s date cannot be read as ISO 8601';
    return {
      unix_s: MADE_UP_UNIX_S,
      known: 'made-up',
      remark: `Epochs are made up, since ${why}: lift-off is put at ${epochText(MADE_UP_UNIX_S, 0)}. Only differences between epochs mean anything.`,
    };
  }
  const unix_s = read.seconds;
  if (!TIME_OF_DAY.test(date)) {
    return {
      unix_s,
      known: 'day',
      remark: `The time of day is made up: the flight has a date without one, and lift-off is put at ${epochText(unix_s, 0)}.`,
    };
  }
  const zone = ZONE.test(date) ? '' : ' The date names no zone and is taken for UTC.';
  return { unix_s, known: 'clock', remark: `Lift-off is at ${epochText(unix_s, 0)}.${zone}` };
}

/** `YYYY-MM-DDThh:mm:ss.ffffff`, UTC, of a time in s after a UNIX time in s. */
export function epochText(unix_s: number, time_s: number): string {
  const whole = Math.floor(unix_s);
  // The small parts are added first: microseconds survive there and not in UNIX seconds.
  const micros = Math.round((unix_s - whole + time_s) * 1e6);
  const seconds = Math.floor(micros / 1e6);
  const fraction = String(micros - seconds * 1e6).padStart(6, '0');
  return `${new Date((whole + seconds) * 1000).toISOString().slice(0, 19)}.${fraction}`;
}

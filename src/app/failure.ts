import { LossbookError, type Where } from '../errors.ts';
import type { Failure } from './protocol.ts';

/**
 * What to do next where the catalogue's advice is an option of the command line, in the page's own terms.
 * Codes that are not listed keep the catalogue's advice.
 */
const onThePage: Readonly<Record<string, string>> = {
  'log-no-time': 'name the column in the file’s header, for instance time_s, and give the log again',
  'log-no-motion':
    'name the columns in the file’s header, for instance altitude_m and speed_m_s, and give it again',
  'log-is-a-card': 'give it together with its log: NAME.mission.json is taken for NAME.csv',
  'log-is-a-plan': 'give the log of the flight that was flown',
  'card-json-broken': 'mend the text at the place named and give log and card again',
  'no-flight': 'check that altitude and speed stand in the columns named so',
  'oem-centre-unknown': 'give the world in the flight’s mission card',
  'nothing-to-exchange': 'check that altitude and speed stand in the columns named so',
};

/**
 * Any thrown thing in words for the page: what, where and what to do next. Never a stack.
 * @param where file to name when the error itself names none
 */
export function failureOf(error: unknown, where: Where = {}): Failure {
  if (error instanceof LossbookError) {
    return {
      code: error.code,
      what: error.what,
      next: onThePage[error.code] ?? error.next,
      where: { ...where, ...error.where },
    };
  }
  return {
    code: null,
    what: `something went wrong that nobody foresaw (${error instanceof Error ? error.message : String(error)})`,
    next: 'the file itself is untouched; reload the page and try again, and if it happens again report this sentence',
    where,
  };
}

/** The place in words: `NAME, row 12, column “alt”`; empty when nothing is known of it. */
export function placeText(where: Where): string {
  return [
    where.file,
    where.row === undefined ? undefined : `row ${where.row}`,
    where.column === undefined ? undefined : `column “${where.column}”`,
  ]
    .filter((part) => part !== undefined)
    .join(', ');
}

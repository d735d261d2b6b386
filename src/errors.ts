/**
 * The one catalogue of messages that a user can meet. A message says what was being done, the value, where
 * (file, row, column) and what to do next. Rooms throw `LossbookError` with a code from here and nothing else.
 */

/** Exit codes of the command line: 2 usage, 3 input that could not be read, 4 read but nothing derivable. */
export type ExitCode = 2 | 3 | 4;

/** Values that a message is filled with. */
export type MessageValues = Readonly<Record<string, string | number>>;

interface Message {
  readonly exit: ExitCode;
  readonly what: (v: MessageValues) => string;
  readonly next: (v: MessageValues) => string;
}

const messages = {
  'file-missing': {
    exit: 3,
    what: () => 'there is no such file',
    next: () => 'check the path and the spelling',
  },
  'file-unreadable': {
    exit: 3,
    what: (v) => `the file cannot be read: ${v.reason}`,
    next: () => 'check that it is a file and that you may read it',
  },
  'file-empty': {
    exit: 3,
    what: () => 'the file holds nothing',
    next: () => 'export the log again and look at its size',
  },
  'log-not-text': {
    exit: 3,
    what: () => 'the content is neither text nor JSON nor gzip of either',
    next: () => 'export the log as CSV or JSON',
  },
  'log-too-large': {
    exit: 3,
    what: (v) => `the log is too large: ${v.size}, and at most ${v.limit} are read`,
    next: () => 'cut it to the flight, or keep every tenth row',
  },
  'log-no-table': {
    exit: 3,
    what: () => 'no table of numbers was found',
    next: () => 'a log has a header line and then one row of numbers for each time',
  },
  'log-json-broken': {
    exit: 3,
    what: (v) => `the JSON breaks off or is malformed: ${v.reason}`,
    next: () =>
      'export the log again; an array of objects, an object of arrays or one object per line is read',
  },
  'log-no-time': {
    exit: 3,
    what: (v) => `no column could be understood as time (columns: ${v.columns})`,
    next: () => 'name it: --map time=COLUMN[:UNIT]',
  },
  'log-no-motion': {
    exit: 3,
    what: (v) => `no columns could be understood as altitude and speed (columns: ${v.columns})`,
    next: () => 'name them: --map altitude=COLUMN[:UNIT] --map speed=COLUMN[:UNIT]',
  },
  'log-too-short': {
    exit: 3,
    what: (v) => `only ${v.rows} usable rows`,
    next: () => 'a review needs at least 10 rows with a time, an altitude and a speed',
  },
  'log-is-a-card': {
    exit: 3,
    what: () => 'this is a mission card, not a flight log',
    next: () => 'give the log first and the card with --mission',
  },
  'log-is-a-plan': {
    exit: 3,
    what: () =>
      'this is a plan (pitch or throttle against an axis), not a flight log: it has no flown states',
    next: () => 'give the flown log, and the plan with --plan',
  },
  'plan-is-a-card': {
    exit: 3,
    what: () => 'this is a mission card, not a plan',
    next: () => 'give the plan itself: pitch and throttle against time, altitude or speed',
  },
  'plan-no-table': {
    exit: 3,
    what: () => 'no table of numbers was found in the plan',
    next: () =>
      'write a header line such as time_s,pitch_deg,throttle and under it a row of numbers for each time at which pitch or throttle changes its course',
  },
  'plan-no-axis': {
    exit: 3,
    what: (v) =>
      `no column of the plan could be understood as time, altitude or speed (columns: ${v.columns})`,
    next: () => 'name one in its header, such as time_s or altitude_m',
  },
  'plan-no-controls': {
    exit: 3,
    what: (v) => `the plan has neither pitch nor throttle nor events (columns: ${v.columns})`,
    next: () => 'name them in the header, such as pitch_deg and throttle',
  },
  'plan-too-short': {
    exit: 3,
    what: () => 'the plan has fewer than two rows and no events',
    next: () => 'give a row for each time at which pitch or throttle changes its course',
  },
  'plan-axis-falls': {
    exit: 3,
    what: (v) => `the plan’s ${v.axis} goes back from ${v.before} to ${v.value} ${v.unit}`,
    next: () => 'put its rows in rising order',
  },
  'plan-row-unplaced': {
    exit: 3,
    what: (v) => `a row of the plan has no ${v.axis} that can be read (${v.read})`,
    next: (v) => `give the row its ${v.axis}, or empty it`,
  },
  'plan-bad-value': {
    exit: 3,
    what: (v) => `the plan has ${v.what} = ${v.value}, but it must be ${v.expected}`,
    next: () => 'correct the value',
  },
  'plan-unknown-event': {
    exit: 3,
    what: (v) => `there is no event “${v.event}”${v.suggestion}`,
    next: (v) => `use one of: ${v.events}`,
  },
  'ascent-not-found': {
    exit: 4,
    what: (v) => `no best ascent was found: ${v.reason}`,
    next: () => 'complete the mission card (vehicle, stages, target), then search again',
  },
  'plan-not-flyable': {
    exit: 3,
    what: (v) => `the plan cannot be flown: ${v.reason}`,
    next: (v) => `${v.next}`,
  },
  'map-unknown-channel': {
    exit: 2,
    what: (v) => `there is no channel “${v.channel}”${v.suggestion}`,
    next: (v) => `use one of: ${v.channels}`,
  },
  'map-unknown-column': {
    exit: 2,
    what: (v) => `the log has no column “${v.column}”${v.suggestion}`,
    next: (v) => `its columns are: ${v.columns}`,
  },
  'map-unknown-unit': {
    exit: 2,
    what: (v) => `“${v.unit}” is not a unit of ${v.quantity}${v.suggestion}`,
    next: (v) => `use one of: ${v.units}`,
  },
  'part-missing': {
    exit: 2,
    what: (v) =>
      `the file holds ${v.parts === 1 ? 'one flight' : `${v.parts} flights`}, there is no part ${v.part}`,
    next: (v) => (v.parts === 1 ? 'leave --part out' : `use --part 1 to --part ${v.parts}`),
  },
  'card-json-broken': {
    exit: 3,
    what: (v) => `the mission card is not valid JSON: ${v.reason}`,
    next: () => 'mend the text at the place named; lossbook check CARD says when it is right',
  },
  'card-unknown-field': {
    exit: 3,
    what: (v) => `the mission card has an unknown field “${v.field}”${v.suggestion}`,
    next: () => 'correct its spelling or take it out',
  },
  'card-bad-value': {
    exit: 3,
    what: (v) => `the mission card has ${v.field} = ${v.value}, but it must be ${v.expected}`,
    next: () => 'correct the value',
  },
  'world-unknown': {
    exit: 2,
    what: (v) => `there is no world “${v.world}”${v.suggestion}`,
    next: () => 'use earth, moon or mars, or define the world in the mission card',
  },
  'target-unreadable': {
    exit: 2,
    what: (v) => `“${v.target}” is not an altitude`,
    next: () => 'write for instance --target 90km',
  },
  usage: {
    exit: 2,
    what: (v) => `${v.reason}`,
    next: (v) => `${['lossbook', v.command, '--help'].filter((word) => word !== '').join(' ')} shows how`,
  },
  'file-unwritable': {
    exit: 2,
    what: (v) => `the file cannot be written: ${v.reason}`,
    next: () => 'name a file in a folder that exists and that you may write to',
  },
  'book-broken': {
    exit: 3,
    what: (v) => `this is no whole logbook: ${v.reason}`,
    next: () => 'export the logbook again and give that file',
  },
  'book-too-large': {
    exit: 3,
    what: (v) => `the logbook has ${v.size}, and one file takes at most ${v.limit}`,
    next: () => 'delete or thin out the largest flights and export again',
  },
  'page-missing': {
    exit: 3,
    what: (v) => `the page is not beside the command: ${v.reason}`,
    next: () => 'build it with npm run build',
  },
  'port-taken': {
    exit: 2,
    what: (v) => `port ${v.port} of 127.0.0.1 cannot be used: ${v.reason}`,
    next: (v) =>
      `end the other program or choose a port: lossbook open --port ${Number(v.port) < 65_535 ? Number(v.port) + 1 : 5741}`,
  },
  'nothing-to-exchange': {
    exit: 4,
    what: (v) => `no ${v.what} can be written: position or velocity is not known`,
    next: () => 'check the columns with lossbook check LOG',
  },
  'oem-broken': {
    exit: 3,
    what: (v) => `the ephemeris message cannot be read: ${v.reason}`,
    next: () =>
      'a CCSDS 502.0-B message in keyword = value notation is read: META_START … META_STOP, then lines of epoch X Y Z VX VY VZ in km and km/s',
  },
  'oem-centre-unknown': {
    exit: 3,
    what: (v) => `the ephemeris counts from the centre of ${v.centre}, and no world of that name is known`,
    next: () => 'give the world in a mission card (--mission) or by name (--world)',
  },
  cancelled: {
    exit: 3,
    what: () => 'reading was ended before it was done',
    next: () => 'start again to read it whole',
  },
  'no-flight': {
    exit: 4,
    what: () => 'the log was read, but nothing in it moves: altitude and speed stay what they were',
    next: () => 'check the columns with lossbook check LOG',
  },
} as const satisfies Record<string, Message>;

/** Code of a message in the catalogue. */
export type MessageCode = keyof typeof messages;

/** Every code, for the test that makes each message appear. */
export const messageCodes = Object.keys(messages) as readonly MessageCode[];

/** Where a message points: file name, 1-based row (line of the file or row of the table) and column header. */
export interface Where {
  readonly file?: string;
  readonly row?: number;
  readonly column?: string;
}

/** The only error that the engine throws on purpose. */
export class LossbookError extends Error {
  readonly code: MessageCode;
  readonly where: Where;
  /** Field of a mission card that it is about, as `vehicle.stages[1].dryMass_kg`; null for any other message. */
  readonly field: string | null;
  readonly exit: ExitCode;
  /** What is wrong, one clause. */
  readonly what: string;
  /** What to do next, one clause. */
  readonly next: string;

  constructor(code: MessageCode, values: MessageValues = {}, where: Where = {}) {
    const message: Message = messages[code];
    const what = message.what(values);
    const next = message.next(values);
    const place = [
      where.file,
      where.row === undefined ? undefined : `row ${where.row}`,
      where.column === undefined ? undefined : `column “${where.column}”`,
    ].filter((p) => p !== undefined);
    super(`${place.length ? `${place.join(', ')}: ` : ''}${what}${what.endsWith('?') ? ' –' : ';'} ${next}.`);
    this.name = 'LossbookError';
    this.code = code;
    this.where = where;
    this.field = typeof values.field === 'string' ? values.field : null;
    this.exit = message.exit;
    this.what = what;
    this.next = next;
  }
}

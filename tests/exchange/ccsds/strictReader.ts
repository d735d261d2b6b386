/**
 * A reading of OEM and OPM texts that shares nothing with the writer: it goes through the rules of CCSDS 502.0-B
 * (§3, §5 and §7: order of the keywords, what is mandatory, form of lines, epochs and numbers) and throws on the
 * first that is broken.
 */
export interface State {
  readonly unix_s: number;
  readonly r_km: readonly number[];
  readonly v_km_s: readonly number[];
}

const headerOrder = ['CREATION_DATE', 'ORIGINATOR'];
const oemMetadata = [
  'OBJECT_NAME',
  'OBJECT_ID',
  'CENTER_NAME',
  'REF_FRAME',
  'REF_FRAME_EPOCH?',
  'TIME_SYSTEM',
  'START_TIME',
  'USEABLE_START_TIME?',
  'USEABLE_STOP_TIME?',
  'STOP_TIME',
  'INTERPOLATION?',
  'INTERPOLATION_DEGREE?',
];
const opmMetadata = [
  'OBJECT_NAME',
  'OBJECT_ID',
  'CENTER_NAME',
  'REF_FRAME',
  'REF_FRAME_EPOCH?',
  'TIME_SYSTEM',
];
const opmState = ['EPOCH', 'X', 'Y', 'Z', 'X_DOT', 'Y_DOT', 'Z_DOT'];
const opmElements = [
  'SEMI_MAJOR_AXIS',
  'ECCENTRICITY',
  'INCLINATION',
  'RA_OF_ASC_NODE',
  'ARG_OF_PERICENTER',
  'TRUE_ANOMALY',
  'GM',
];
const opmRest = ['MASS?', 'SOLAR_RAD_AREA?', 'SOLAR_RAD_COEFF?', 'DRAG_AREA?', 'DRAG_COEFF?'];
const manoeuvre = [
  'MAN_EPOCH_IGNITION',
  'MAN_DURATION',
  'MAN_DELTA_MASS',
  'MAN_REF_FRAME',
  'MAN_DV_1',
  'MAN_DV_2',
  'MAN_DV_3',
];
const units: Readonly<Record<string, string>> = {
  X: 'km',
  Y: 'km',
  Z: 'km',
  X_DOT: 'km/s',
  Y_DOT: 'km/s',
  Z_DOT: 'km/s',
  SEMI_MAJOR_AXIS: 'km',
  INCLINATION: 'deg',
  RA_OF_ASC_NODE: 'deg',
  ARG_OF_PERICENTER: 'deg',
  TRUE_ANOMALY: 'deg',
  GM: 'km**3/s**2',
  MASS: 'kg',
  SOLAR_RAD_AREA: 'm**2',
  DRAG_AREA: 'm**2',
  MAN_DURATION: 's',
  MAN_DELTA_MASS: 'kg',
  MAN_DV_1: 'km/s',
  MAN_DV_2: 'km/s',
  MAN_DV_3: 'km/s',
};

/** Seconds since 1970 of a calendar or day-of-year epoch. */
export function strictEpoch(text: string): number {
  const calendar = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)(\.\d+)?Z?$/.exec(text);
  const ordinal = /^(\d{4})-(\d{3})T(\d\d):(\d\d):(\d\d)(\.\d+)?Z?$/.exec(text);
  const parts = calendar ?? ordinal;
  if (parts === null) throw new Error(`no epoch: ${text}`);
  const days =
    calendar === null
      ? Date.UTC(Number(parts[1]), 0, Number(parts[2]))
      : Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3]));
  const [h, m, s, f] = parts.slice(calendar === null ? 3 : 4);
  return days / 1000 + 3600 * Number(h) + 60 * Number(m) + Number(s) + Number(f ?? 0);
}

function strictNumber(text: string): number {
  if (!/^[+-]?\d+(\.\d+)?([eE][+-]?\d+)?$/.test(text)) throw new Error(`no number: ${text}`);
  return Number(text);
}

/** Lines that say something, checked for length and characters; comments apart. */
function strictLines(text: string): { lines: string[]; comments: string[] } {
  const all = text.split('\n');
  for (const line of all) {
    if (line.length > 254) throw new Error(`longer than 254 characters: ${line}`);
    if (!/^[ -~]*$/.test(line)) throw new Error(`not printable ASCII: ${line}`);
  }
  const told = all.map((line) => line.trim()).filter((line) => line !== '');
  return {
    lines: told.filter((line) => !/^COMMENT( |$)/.test(line)),
    comments: told.filter((line) => /^COMMENT( |$)/.test(line)).map((line) => line.slice(8)),
  };
}

class Cursor {
  readonly lines: readonly string[];
  at = 0;
  constructor(lines: readonly string[]) {
    this.lines = lines;
  }
  get line(): string {
    return this.lines[this.at] ?? '';
  }
  /** Takes keywords in the order given; those with `?` may be missing. */
  keys(order: readonly string[]): Record<string, string> {
    const found: Record<string, string> = {};
    for (const wanted of order) {
      const name = wanted.replace('?', '');
      const match = /^([A-Z0-9_]+) *= *(.*?)(?: *\[([^\]]+)\])?$/.exec(this.line);
      if (match?.[1] !== name) {
        if (wanted.endsWith('?')) continue;
        throw new Error(`${name} is missing before: ${this.line}`);
      }
      if (match[2] === '' || match[2] === undefined) throw new Error(`${name} has no value`);
      if (match[3] !== undefined && match[3] !== units[name]) throw new Error(`${name} in ${match[3]}`);
      found[name] = match[2];
      this.at++;
    }
    return found;
  }
  take(line: string): void {
    if (this.line !== line) throw new Error(`${line} is missing before: ${this.line}`);
    this.at++;
  }
}

export function strictOem(text: string) {
  const { lines, comments } = strictLines(text);
  const cursor = new Cursor(lines);
  const header = cursor.keys(['CCSDS_OEM_VERS', 'CLASSIFICATION?', ...headerOrder]);
  strictEpoch(header.CREATION_DATE ?? '');
  const blocks: { metadata: Record<string, string>; states: State[] }[] = [];
  while (cursor.at < lines.length) {
    cursor.take('META_START');
    const metadata = cursor.keys(oemMetadata);
    cursor.take('META_STOP');
    const states: State[] = [];
    while (/^\d/.test(cursor.line)) {
      const [epoch = '', ...numbers] = cursor.line.split(/ +/);
      if (numbers.length !== 6 && numbers.length !== 9) throw new Error(`not a state: ${cursor.line}`);
      const values = numbers.map(strictNumber);
      const unix_s = strictEpoch(epoch);
      const before = states[states.length - 1];
      // The last block of the standard's own test text repeats its last line.
      if (before !== undefined && !(unix_s >= before.unix_s)) throw new Error(`epochs fall: ${cursor.line}`);
      states.push({ unix_s, r_km: values.slice(0, 3), v_km_s: values.slice(3, 6) });
      cursor.at++;
    }
    const [first, last] = [states[0], states[states.length - 1]];
    if (first === undefined || last === undefined) throw new Error('a block without states');
    if (first.unix_s < strictEpoch(metadata.START_TIME ?? '')) throw new Error('a state before START_TIME');
    if (last.unix_s > strictEpoch(metadata.STOP_TIME ?? '')) throw new Error('a state after STOP_TIME');
    if (cursor.line === 'COVARIANCE_START') {
      cursor.at = lines.indexOf('COVARIANCE_STOP', cursor.at) + 1;
      if (cursor.at === 0) throw new Error('COVARIANCE_STOP is missing');
    }
    blocks.push({ metadata, states });
  }
  return { header, blocks, comments };
}

export function strictOpm(text: string) {
  const { lines, comments } = strictLines(text);
  const cursor = new Cursor(lines);
  const header = cursor.keys(['CCSDS_OPM_VERS', 'CLASSIFICATION?', ...headerOrder]);
  strictEpoch(header.CREATION_DATE ?? '');
  const metadata = cursor.keys(opmMetadata);
  const state = cursor.keys(opmState);
  // All seven elements or none.
  const elements = cursor.line.startsWith('SEMI_MAJOR_AXIS') ? cursor.keys(opmElements) : null;
  const rest = cursor.keys(opmRest);
  const manoeuvres: Record<string, string>[] = [];
  while (cursor.line.startsWith('MAN_')) manoeuvres.push(cursor.keys(manoeuvre));
  if (cursor.at !== lines.length) throw new Error(`not expected: ${cursor.line}`);
  const numbers = (record: Record<string, string>) =>
    Object.fromEntries(Object.entries(record).map(([k, v]) => [k, strictNumber(v)]));
  const { EPOCH = '', ...vector } = state;
  return {
    header,
    metadata,
    unix_s: strictEpoch(EPOCH),
    state: numbers(vector),
    elements: elements === null ? null : numbers(elements),
    rest: numbers(rest),
    manoeuvres,
    comments,
  };
}

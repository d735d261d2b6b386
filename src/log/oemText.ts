import { LossbookError } from '../errors.ts';
import { readClock } from './clock.ts';

/** The states of the first object of a message, block after block, in the order written. */
export interface Ephemeris {
  readonly object: string;
  /** Names of further objects in the message. */
  readonly others: readonly string[];
  readonly centre: string;
  readonly frame: string;
  readonly timeSystem: string;
  /** One per state, as written. */
  readonly epochs: readonly string[];
  /** X, Y, Z in m and X_DOT, Y_DOT, Z_DOT in m/s, one array each, one value per epoch. */
  readonly states: readonly Float64Array[];
}

type Metadata = Readonly<Record<string, string>>;

/**
 * Reads an Orbit Ephemeris Message in keyword = value notation (CCSDS 502.0-B-2, §5): calendar and day-of-year
 * epochs, optional accelerations; covariance blocks are passed over.
 * @throws LossbookError `oem-broken` with the line.
 */
export function readOem(text: string, file: string): Ephemeris {
  const lines = text.split(/\r\n?|\n/u);
  const epochs: string[] = [];
  const rows: number[][] = [];
  const others = new Set<string>();
  let first: Metadata | null = null;
  let block: Record<string, string> | null = null;
  let place: 'header' | 'metadata' | 'data' | 'covariance' = 'header';
  for (const [i, raw] of lines.entries()) {
    const line = raw.trim();
    const broken = (reason: string) => new LossbookError('oem-broken', { reason }, { file, row: i + 1 });
    if (line === '' || /^COMMENT(?:\s|$)/u.test(line)) continue;
    if (line === 'META_START') {
      block = {};
      place = 'metadata';
    } else if (line === 'META_STOP') {
      if (block === null) throw broken('META_STOP comes before META_START');
      const name = objectOf(block);
      first ??= whole(block, broken);
      if (name !== objectOf(first)) others.add(name);
      else if (block.REF_FRAME !== first.REF_FRAME || block.CENTER_NAME !== first.CENTER_NAME)
        throw broken('the frame or the centre changes between blocks, and one flight needs one');
      place = 'data';
    } else if (line === 'COVARIANCE_START') place = 'covariance';
    else if (line === 'COVARIANCE_STOP') place = 'data';
    else if (place === 'metadata' && block !== null) {
      const [, key = '', value = ''] = /^(\w+)\s*=\s*(.*)$/u.exec(line) ?? [];
      if (key === '') throw broken(`“${line.slice(0, 40)}” is not keyword = value`);
      block[key] = value;
    } else if (place === 'data' && block !== null && first !== null && objectOf(block) === objectOf(first)) {
      const [epoch = '', ...cells] = line.split(/\s+/u);
      const values = cells.map(Number);
      if (readClock(epoch)?.kind !== 'date') throw broken(`“${epoch.slice(0, 40)}” is not an epoch`);
      if ((values.length !== 6 && values.length !== 9) || !values.every(Number.isFinite))
        throw broken('an epoch stands without its six numbers X Y Z VX VY VZ');
      epochs.push(epoch);
      rows.push(values);
    }
  }
  if (first === null) throw new LossbookError('oem-broken', { reason: 'it has no META_START' }, { file });
  return {
    object: objectOf(first),
    others: [...others],
    centre: first.CENTER_NAME ?? '',
    frame: first.REF_FRAME ?? '',
    timeSystem: first.TIME_SYSTEM ?? '',
    epochs,
    states: Array.from({ length: 6 }, (_, k) =>
      Float64Array.from(rows, (row) => 1000 * (row[k] ?? Number.NaN)),
    ),
  };
}

function objectOf({ OBJECT_NAME = '', OBJECT_ID = '' }: Metadata): string {
  return [OBJECT_NAME, OBJECT_ID].filter((part) => part !== '').join(' ');
}

function whole(block: Metadata, broken: (reason: string) => LossbookError): Metadata {
  for (const key of ['OBJECT_NAME', 'CENTER_NAME', 'REF_FRAME', 'TIME_SYSTEM']) {
    if (!block[key]) throw broken(`the metadata have no ${key}`);
  }
  return block;
}

import { LossbookError } from '../errors.ts';
import type { StateVector } from '../orbit/kepler.ts';
import { epochOfTimeZero, epochText } from './ccsds/epoch.ts';
import { inertialFrame } from './ccsds/frame.ts';
import { flightRemarks, heading, type MessageOptions, subject } from './ccsds/heading.ts';
import { type Flown, inertialStates } from './ccsds/inertialStates.ts';
import { keyword } from './ccsds/kvn.ts';

/**
 * The flown path as an Orbit Ephemeris Message: one block of inertial states in km and km/s, one line for each row
 * of the log that has them. Epochs are those of the card's `flight.date`, or made up and called so; frame and
 * constants stand in the comments. Source: CCSDS 502.0-B-2, §5, keyword = value notation.
 * @throws LossbookError `nothing-to-exchange` where no row has a position and a velocity.
 */
export function oem(analysis: Flown, options: MessageOptions): string {
  const { review, strips } = analysis;
  const epoch = epochOfTimeZero(review.mission.date);
  const frame = inertialFrame(review, epoch);
  const stateAt = inertialStates(analysis, frame);
  const lines: string[] = [];
  const epochs: string[] = [];
  for (let row = 0; row < strips.time_s.length; row++) {
    const state = stateAt(row);
    const time = epochText(epoch.unix_s, strips.time_s[row] ?? Number.NaN);
    // Epochs must rise: of two within a microsecond the first stands.
    if (state === null || time === epochs[epochs.length - 1]) continue;
    epochs.push(time);
    lines.push(`${time} ${stateText(state)}`);
  }
  const [first] = epochs;
  const last = epochs[epochs.length - 1];
  if (first === undefined || last === undefined) {
    throw new LossbookError('nothing-to-exchange', { what: 'ephemeris' }, { file: review.source.file });
  }
  const remarks = [
    ...flightRemarks(review, epoch, frame),
    'States follow from the log as the review understood it; engines burn along parts of the path.',
  ];
  const text = [
    ...heading('OEM', review, options, remarks),
    '',
    'META_START',
    ...subject(review, frame),
    keyword('START_TIME', first),
    keyword('STOP_TIME', last),
    'META_STOP',
    '',
    ...lines,
  ];
  return `${text.join('\n')}\n`;
}

/** Kilometres to the millimetre, km/s to the micrometre a second. */
function stateText({ position_m, velocity_m_s }: StateVector): string {
  return [
    ...position_m.map((x) => (x / 1000).toFixed(6)),
    ...velocity_m_s.map((v) => (v / 1000).toFixed(9)),
  ].join(' ');
}

import { LossbookError } from '../errors.ts';
import { elementsFromState, semiMajorAxis_m } from '../orbit/elements.ts';
import type { StateVector } from '../orbit/kepler.ts';
import { epochOfTimeZero, epochText } from './ccsds/epoch.ts';
import { inertialFrame } from './ccsds/frame.ts';
import { flightRemarks, heading, type MessageOptions, subject } from './ccsds/heading.ts';
import { type Flown, inertialStates } from './ccsds/inertialStates.ts';
import { comments, keyword } from './ccsds/kvn.ts';
import { indexAt } from './sampleAt.ts';

const DEG = 180 / Math.PI;

/**
 * The state at the end of the ascent as an Orbit Parameter Message: inertial state, its osculating elements, and
 * the mass where the log has one. Source: CCSDS 502.0-B-2, §3, keyword = value notation.
 * @throws LossbookError `nothing-to-exchange` where position or velocity is not known there.
 */
export function opm(analysis: Flown, options: MessageOptions): string {
  const { review, strips } = analysis;
  const { orbit, ledger, mission } = review;
  const epoch = epochOfTimeZero(mission.date);
  const frame = inertialFrame(review, epoch);
  const time_s = orbit.cutoff_s ?? ledger.end_s;
  const row = Math.max(0, indexAt(strips.time_s, time_s));
  const state = inertialStates(analysis, frame)(row);
  if (state === null) {
    throw new LossbookError('nothing-to-exchange', { what: 'orbit' }, { file: review.source.file });
  }
  const mass = strips.channels.mass_kg?.values[row];
  const moment =
    orbit.cutoff_s === null ? 'the last moment of the ascent in the log' : 'the last cutoff of the ascent';
  const remarks = [...flightRemarks(review, epoch, frame), `The state is that of ${moment}.`];
  const text = [
    ...heading('OPM', review, options, remarks),
    ...subject(review, frame),
    '',
    ...comments('State vector'),
    keyword('EPOCH', epochText(epoch.unix_s, strips.time_s[row] ?? 0)),
    ...stateLines(state),
    '',
    ...comments('Osculating Keplerian elements'),
    ...elementLines(mission.constants.gravitationalParameter_m3_s2, state),
    ...(mass === undefined || !Number.isFinite(mass)
      ? []
      : [
          '',
          ...comments('Mass after cutoff, propellant left included'),
          keyword('MASS', mass.toFixed(3), 'kg'),
        ]),
  ];
  return `${text.join('\n')}\n`;
}

function stateLines({ position_m, velocity_m_s }: StateVector): string[] {
  const names = ['X', 'Y', 'Z'];
  return [
    ...position_m.map((x, i) => keyword(names[i] ?? '', (x / 1000).toFixed(6), 'km')),
    ...velocity_m_s.map((v, i) => keyword(`${names[i]}_DOT`, (v / 1000).toFixed(9), 'km/s')),
  ];
}

function elementLines(mu_m3_s2: number, state: StateVector): string[] {
  const elements = elementsFromState(mu_m3_s2, state);
  const angle = (name: string, value_rad: number) => keyword(name, (value_rad * DEG).toFixed(9), 'deg');
  return [
    keyword('SEMI_MAJOR_AXIS', (semiMajorAxis_m(elements) / 1000).toFixed(6), 'km'),
    keyword('ECCENTRICITY', elements.eccentricity.toFixed(12)),
    angle('INCLINATION', elements.inclination_rad),
    angle('RA_OF_ASC_NODE', elements.ascendingNode_rad),
    angle('ARG_OF_PERICENTER', elements.argumentOfPeriapsis_rad),
    angle('TRUE_ANOMALY', elements.trueAnomaly_rad),
    keyword('GM', String(mu_m3_s2 / 1e9), 'km**3/s**2'),
  ];
}

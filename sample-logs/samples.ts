import { timeTable } from '../src/refly/controls.ts';
import { bobstayCard, fairleadCard, homewardCard, thimbleCard } from './cards.ts';
import type { Computed, Style, Track } from './flights.ts';
import { compute } from './flights.ts';
import { homeward } from './homeward.ts';
import { ladderAttempts } from './ladder.ts';
import type { Column } from './logFile.ts';
import { delimitedLog, jsonLog } from './logFile.ts';

const degree = Math.PI / 180;
const foot_m = 0.3048;
const knot_m_s = 1852 / 3600;
const pound_kg = 0.45359237;

/** A sample flight before it is flown. */
export interface Sample {
  readonly id: string;
  readonly title: string;
  readonly log: string;
  readonly note: string;
  readonly card: object;
  readonly style: Style;
  readonly write: (track: Track) => string;
  /** Name of the set that a flight is part of, for flights to be compared. */
  readonly set?: string;
}

function column(
  header: string,
  from: keyof Track,
  perUnit: number,
  decimals: number,
  more: Partial<Column> = {},
): Column {
  return { header, from, perUnit, decimals, ...more };
}

const orbit160 = { altitude_m: 160000, verticalSpeed_m_s: 0 };
const plain = { holdDown_s: 0, pad_s: 0, speedMissed_m_s: 0, coast_s: 90, rate_Hz: 5, kickSpeed_m_s: 50 };

/** The sample flights in the order to show. */
export const samples: readonly Sample[] = [
  {
    id: 'bobstay-medlar-4',
    title: 'Bobstay · Medlar, attempt 4',
    log: 'bobstay-medlar-4.csv',
    note: 'More payload than ever, lofted far too steeply; the tanks run dry short of orbit.',
    card: bobstayCard(6200, {
      pilot: 'Medlar',
      attempt: 4,
      date: '2031-05-17',
      notes: 'Kept the nose up to get clear of the air.',
    }),
    style: { ...plain, kick_deg: 5, aim: orbit160, holdDown_s: 2, pad_s: 3 },
    write: (track) =>
      delimitedLog(
        track,
        [
          column('T+ (s)', 'time_s', 1, 1),
          column('Altitude [m]', 'altitude_m', 1, 1),
          column('Speed [m/s]', 'speed_m_s', 1, 2),
          column('Mass [kg]', 'mass_kg', 1, 1),
          column('Throttle [%]', 'throttle', 0.01, 0),
          column('Pitch [°]', 'pitch_rad', degree, 2),
        ],
        ',',
        4,
      ),
  },
  {
    id: 'bobstay-tansy-1',
    title: 'Bobstay · Tansy, attempt 1',
    log: 'bobstay-tansy-1.csv',
    note: 'Flown to plan: in the target orbit with propellant to spare.',
    card: bobstayCard(3000, { pilot: 'Tansy', attempt: 1, date: '2031-04-02', notes: 'To plan.' }),
    style: { ...plain, kick_deg: 10.6, aim: orbit160, holdDown_s: 1.5, pad_s: 4, coast_s: 120 },
    write: (track) =>
      delimitedLog(
        track,
        [
          column('time_s', 'time_s', 1, 1, { offset: 5.5 }),
          column('altitude_m', 'altitude_m', 1, 1),
          column('speed_m_s', 'speed_m_s', 1, 2),
          column('mass_kg', 'mass_kg', 1, 1),
          column('throttle', 'throttle', 1, 2),
          column('pitch_deg', 'pitch_rad', degree, 2),
        ],
        ',',
        1,
      ),
  },
  {
    id: 'bobstay-medlar-2',
    title: 'Bobstay · Medlar, attempt 2',
    log: 'bobstay-medlar-2.csv',
    note: 'Lofted, and stopped a little early: an orbit, but not the one wanted. This log has sensor noise.',
    card: bobstayCard(3000, {
      pilot: 'Medlar',
      attempt: 2,
      date: '2031-04-19',
      notes: 'Steep out of the air; cut by hand.',
    }),
    style: { ...plain, kick_deg: 6.6, aim: orbit160, speedMissed_m_s: 11 },
    write: (track) =>
      delimitedLog(
        track,
        [
          column('Time (s)', 'time_s', 1, 2),
          column('Alt (km)', 'altitude_m', 1000, 4, { noise: 0.004 }),
          column('Speed (m/s)', 'speed_m_s', 1, 2, { noise: 0.25 }),
          column('Mass (t)', 'mass_kg', 1000, 4),
          column('Throttle (%)', 'throttle', 0.01, 0),
          column('Pitch (deg)', 'pitch_rad', degree, 2, { noise: 0.15 }),
        ],
        ';',
        20,
      ),
  },
  {
    id: 'bobstay-teasel-1',
    title: 'Bobstay · Teasel, attempt 1',
    log: 'bobstay-teasel-1.csv',
    note: 'Cut off early with propellant left; in feet, knots and pounds.',
    card: bobstayCard(3000, {
      pilot: 'Teasel',
      attempt: 1,
      date: '2031-04-23',
      notes: 'Took the wrong speed for the mark.',
    }),
    style: { ...plain, kick_deg: 9.2, aim: orbit160, speedMissed_m_s: 140, rate_Hz: 4 },
    write: (track) =>
      delimitedLog(
        track,
        [
          column('Time [s]', 'time_s', 1, 2),
          column('Altitude [ft]', 'altitude_m', foot_m, 0),
          column('Speed [kn]', 'speed_m_s', knot_m_s, 2),
          column('Mass [lb]', 'mass_kg', pound_kg, 0),
          column('Throttle', 'throttle', 1, 2),
          column('Pitch [deg]', 'pitch_rad', degree, 1),
        ],
        ',',
        5,
      ),
  },
  {
    id: 'bobstay-teasel-2',
    title: 'Bobstay · Teasel, attempt 2',
    log: 'bobstay-teasel-2.csv',
    note: 'The upper stage is never lit; the log runs until it comes down.',
    card: bobstayCard(3000, {
      pilot: 'Teasel',
      attempt: 2,
      date: '2031-05-03',
      notes: 'Nothing happened at the second mark.',
    }),
    style: { ...plain, kick_deg: 10, aim: orbit160, coast_s: 3000, rate_Hz: 4, neverLit: true, pad_s: 2 },
    write: (track) =>
      delimitedLog(
        track,
        [
          column('Time', 'time_s', 1, 2),
          column('Altitude (m)', 'altitude_m', 1, 0),
          column('Speed (km/h)', 'speed_m_s', 1 / 3.6, 1),
          column('Mass (kg)', 'mass_kg', 1, 0),
          column('Throttle (%)', 'throttle', 0.01, 0),
          column('Pitch (°)', 'pitch_rad', degree, 1),
        ],
        '\t',
        6,
      ),
  },
  {
    id: 'fairlead-tansy-1',
    title: 'Fairlead · Tansy, attempt 1',
    log: 'fairlead-tansy-1.json',
    note: 'From Earth with strap-ons and a fairing that drop on the way; a JSON log.',
    card: fairleadCard({ pilot: 'Tansy', attempt: 1, date: '2031-06-11', notes: 'Clean throughout.' }),
    style: {
      ...plain,
      kick_deg: 3.8,
      aim: { altitude_m: 200000, verticalSpeed_m_s: 0 },
      holdDown_s: 1,
      pad_s: 3,
      coast_s: 100,
    },
    write: (track) =>
      jsonLog(
        track,
        [
          column('time_s', 'time_s', 1, 1),
          column('altitude_m', 'altitude_m', 1, 0),
          column('speed_m_s', 'speed_m_s', 1, 1),
          column('vertical_speed_m_s', 'verticalSpeed_m_s', 1, 1),
          column('mass_kg', 'mass_kg', 1, 0),
          column('throttle', 'throttle', 1, 2),
          column('pitch_deg', 'pitch_rad', degree, 2),
        ],
        7,
      ),
  },
  {
    id: 'thimble-teasel-1',
    title: 'Thimble · Teasel, attempt 1',
    log: 'thimble-teasel-1.csv',
    note: 'From the ground of airless Threnby to a low orbit, throttled down near the end.',
    card: thimbleCard({ pilot: 'Teasel', attempt: 1, date: '2031-07-30', notes: 'Lamp lit.' }),
    style: {
      ...plain,
      kick_deg: 0,
      kickSpeed_m_s: 12,
      aim: { altitude_m: 30000, verticalSpeed_m_s: 0 },
      rate_Hz: 10,
      coast_s: 100,
      throttle: timeTable([300, 300], [1, 0.5]),
    },
    write: (track) =>
      delimitedLog(
        track,
        [
          column('MET (s)', 'time_s', 1, 1),
          column('alt (km)', 'altitude_m', 1000, 3),
          column('vel (m/s)', 'speed_m_s', 1, 2),
          column('mass (kg)', 'mass_kg', 1, 2),
          column('throttle (%)', 'throttle', 0.01, 1),
          column('pitch (deg)', 'pitch_rad', degree, 2),
        ],
        ',',
        8,
      ),
  },
  {
    id: 'homeward-tansy-1',
    title: 'Bobstay · Tansy, there and back',
    log: 'homeward-tansy-1.csv',
    note: 'A whole mission: orbit raised and circularised, its plane turned, deorbit, entry, parachutes, touchdown.',
    card: homewardCard({ pilot: 'Tansy', attempt: 1, date: '2031-08-14', notes: 'Capsule down dry.' }),
    style: {
      ...plain,
      kick_deg: 10.6,
      aim: orbit160,
      holdDown_s: 1.5,
      pad_s: 3,
      rate_Hz: 2,
      roundTrip: homeward,
    },
    write: (track) =>
      delimitedLog(
        track,
        [
          column('Time (s)', 'time_s', 1, 1),
          column('Altitude (m)', 'altitude_m', 1, 1),
          column('Speed (m/s)', 'speed_m_s', 1, 2),
          column('Vertical speed (m/s)', 'verticalSpeed_m_s', 1, 2),
          column('Mass (kg)', 'mass_kg', 1, 1),
          column('Throttle (%)', 'throttle', 0.01, 0),
          column('Pitch (°)', 'pitch_rad', degree, 2),
          column('Heading (°)', 'heading_rad', degree, 2),
          column('Course (°)', 'course_rad', degree, 3),
          column('Latitude (°)', 'latitude_rad', degree, 4),
          column('Longitude (°)', 'longitude_rad', degree, 4),
        ],
        ',',
        9,
      ),
  },
  ...ladderAttempts.map(
    ({ pilot, attempt, date, notes, note, ...way }, k): Sample => ({
      id: `ladder-${pilot.toLowerCase()}-${attempt}`,
      title: `Bobstay · ${pilot}, run ${attempt} of 5`,
      log: `ladder-${pilot.toLowerCase()}-${attempt}.csv`,
      note,
      set: 'ladder',
      card: bobstayCard(3000, { pilot, attempt, date, notes }),
      style: { ...plain, aim: orbit160, rate_Hz: 2, coast_s: 75, ...way },
      write: (track) =>
        delimitedLog(
          track,
          [
            column('time_s', 'time_s', 1, 1),
            column('altitude_m', 'altitude_m', 1, 0),
            column('speed_m_s', 'speed_m_s', 1, 1),
            column('mass_kg', 'mass_kg', 1, 0),
            column('throttle', 'throttle', 1, 2),
            column('pitch_deg', 'pitch_rad', degree, 1),
          ],
          ',',
          100 + k,
        ),
    }),
  ),
];

/** Flies a sample. */
export function flySample(sample: Sample): Computed {
  return compute(sample.card, sample.style);
}

/** The files of a sample: its log and its card. */
export function sampleFiles(sample: Sample, computed: Computed): { name: string; text: string }[] {
  return [
    { name: sample.log, text: sample.write(computed.track) },
    { name: `${sample.id}.mission.json`, text: `${JSON.stringify(sample.card, null, 2)}\n` },
  ];
}

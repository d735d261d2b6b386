import { readFileSync } from 'node:fs';

const columns = [
  'time_s',
  'altitude_m',
  'speed_m_s',
  'vertical_speed_m_s',
  'inertial_speed_m_s',
  'mass_kg',
  'throttle',
  'pitch_deg',
  'heading_deg',
  'latitude_deg',
  'longitude_deg',
  'dynamic_pressure_Pa',
];
/** Between two rows 0.1 s apart no engine takes so much: a stage fell away. */
const DROP_KG = 500;

/**
 * A reference flight (synthetic) written down so many times, twelve columns, on straight lines between its rows;
 * masses and throttle jump where a stage falls away or an engine starts.
 */
export function denseLog(rows: number): string {
  const [head, ...lines] = readFileSync('tests/flights/osselby-short.csv', 'utf8').trimEnd().split('\n');
  const names = head!.split(',');
  const places = columns.map((name) => names.indexOf(name));
  const flown = lines.map((line) => line.split(',').map(Number));
  const end = flown.at(-1)![0]!;
  const out = [columns.join(',')];
  let k = 0;
  for (let i = 0; i < rows; i++) {
    const t = (end * i) / (rows - 1);
    while (k < flown.length - 2 && flown[k + 1]![0]! <= t) k++;
    const from = flown[k]!;
    const to = flown[k + 1]!;
    const share = (t - from[0]!) / (to[0]! - from[0]!);
    const cells = places.map((place, c) => {
      const a = from[place]!;
      const b = to[place]!;
      const held = columns[c] === 'throttle' || (columns[c] === 'mass_kg' && a - b > DROP_KG);
      return (held ? a : a + (b - a) * share).toFixed(5);
    });
    cells[0] = t.toFixed(6);
    out.push(cells.join(','));
  }
  return `${out.join('\n')}\n`;
}

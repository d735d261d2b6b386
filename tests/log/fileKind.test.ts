import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fileKind } from '../../src/log/fileKind.ts';
import { bytesOf } from './inventedAscent.ts';

test.each([
  ['{"mission": "Soft Gate", "world": "moon"}', 'card'],
  ['{"vehicle": {"stages": [{"name": "a", "dryMass_kg": 1}]}}', 'card'],
  ['time_s,pitch_deg,throttle\n0,90,1\n', 'plan'],
  ['altitude_m;pitch_deg\n0;90\n', 'plan'],
  ['speed_m_s,throttle\n0,1\n', 'plan'],
  ['{"time_s": [0, 1], "pitch_deg": [90, 80]}', 'plan'],
  ['[{"time_s": 0, "pitch_deg": 90}]', 'plan'],
  ['time_s,altitude_m,speed_m_s,pitch_deg,throttle\n0,0,0,90,1\n', 'log'],
  ['time_s,pitch_deg,throttle,mass_kg,thrust_N\n0,90,1,5,6\n', 'log'],
  ['{"t": 0, "altitude": 1, "speed": 2}\n{"t": 1, "altitude": 1, "speed": 2}\n', 'log'],
  ['{"time": [0, 1], "altitude": [0, 1], "velocity": [0, 1', 'log'],
  ['# t h v\n0 1 2\n1 2 3\n', 'log'],
  ['0,1,2\n1,2,3\n', 'log'],
  ['', 'unknown'],
  ['a letter', 'unknown'],
  ['{"a": 1}', 'unknown'],
  ['null', 'unknown'],
])('%j is a %s', (text, kind) => {
  expect(fileKind(text)).toBe(kind);
  expect(fileKind(bytesOf(text), 'misleading.mission.json')).toBe(kind);
});

test('reference flights and their cards', () => {
  const file = (name: string): Uint8Array =>
    new Uint8Array(readFileSync(new URL(`../flights/${name}`, import.meta.url)));
  expect(fileKind(file('osselby-nominal.csv'))).toBe('log');
  expect(fileKind(file('osselby-nominal.mission.json'))).toBe('card');
});

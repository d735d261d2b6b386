import { expect, test } from 'vitest';
import { cardFaults } from '../../src/mission/cardFaults.ts';

const faults = (card: unknown) =>
  cardFaults('a.mission.json', typeof card === 'string' ? card : JSON.stringify(card)).map((e) => [
    e.code,
    e.field,
  ]);

test('a card that is read has none', () => {
  expect(faults({ world: 'mars', target: { kind: 'orbit', apoapsisAltitude_m: 250e3 } })).toEqual([]);
});

test('every faulty field is named, unknown ones first', () => {
  const card = { site: { latitude_deg: 95 }, vehicle: { stages: [{}, { dryMas_kg: 1, engines: 0.5 }] } };
  expect(faults(card)).toEqual([
    ['card-unknown-field', 'vehicle.stages[1].dryMas_kg'],
    ['card-bad-value', 'site.latitude_deg'],
    ['card-bad-value', 'vehicle.stages[1].engines'],
  ]);
});

test('fields that contradict each other are found once each is right by itself', () => {
  expect(faults({ target: { apoapsisAltitude_m: 150e3, periapsisAltitude_m: 200e3 } })).toEqual([
    ['card-bad-value', 'target.apoapsisAltitude_m'],
  ]);
  expect(faults({ target: { kind: 'suborbital' } })).toEqual([['card-bad-value', 'target.peakAltitude_m']]);
});

test('a text that is no JSON is one fault with its line', () => {
  const [error] = cardFaults('a.mission.json', '{\n  "world": earth\n}');
  expect([error?.code, error?.field, error?.where.row]).toEqual(['card-json-broken', null, 2]);
});

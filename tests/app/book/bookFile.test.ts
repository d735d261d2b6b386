import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bookSchemaName, readBookFile } from '../../../src/app/book/bookFile.ts';
import { someFlight } from './someFlight.ts';

const flight = someFlight({
  card: { name: 'a.mission.json', text: '{}' },
  plan: { name: 'a.plan.csv', text: 't,pitch\n' },
  part: 2,
  pilot: 'Teasel',
  tags: ['late', '<b>'],
  notes: 'two\nlines',
  summary: { margin_m_s: null, attempt: 3, date: '2031-05-17' },
});
const columns = [
  { headers: ['t', 'h'], choices: [{ channel: 'altitude', column: 'h', unit: 'km' }] },
] as const;

test('everything about a flight comes back', () => {
  const text = JSON.stringify({ schema: bookSchemaName, flights: [{ flight, log: 'x/log.csv' }], columns });
  expect(readBookFile(text)).toEqual({ flights: [{ flight, log: 'x/log.csv' }], columns });
});

test('other texts and later schemas are no book', () => {
  for (const text of [
    '',
    '[]',
    '{"schema":"lossbook-book/2","flights":[]}',
    '{"schema":"lossbook-book/1"}',
    'null',
  ]) {
    expect(readBookFile(text), text).toBeNull();
  }
});

test('what anybody may have written is read as text or left out, never taken as it is', () => {
  fc.assert(
    fc.property(fc.anything(), fc.anything(), (odd, other) => {
      const text = JSON.stringify(
        {
          schema: bookSchemaName,
          flights: [
            { flight: { ...flight, card: odd, tags: other, notes: odd, part: other }, log: 'l' },
            odd,
          ],
          columns: [{ headers: odd, choices: other }, other],
        },
        (_, v: unknown) => (typeof v === 'bigint' ? String(v) : v),
      );
      const read = readBookFile(text);
      for (const { flight: f } of read?.flights ?? []) {
        expect(typeof f.notes).toBe('string');
        expect(f.tags.every((t) => typeof t === 'string')).toBe(true);
        expect(Number.isInteger(f.part) && f.part >= 1).toBe(true);
      }
    }),
  );
});

test('a flight without identity or log is left out, the others stay', () => {
  const text = JSON.stringify({
    schema: bookSchemaName,
    flights: [{ flight: { ...flight, id: '' }, log: 'a' }, { flight }, { flight, log: 'b' }],
    columns: [],
  });
  expect(readBookFile(text)?.flights.map((f) => f.log)).toEqual(['b']);
});

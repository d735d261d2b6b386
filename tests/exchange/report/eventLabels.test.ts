import { expect, test } from 'vitest';
import { eventLabels } from '../../../src/exchange/report/eventLabels.ts';
import type { EventName, ReviewEvent } from '../../../src/review/types.ts';

const event = (name: EventName, time_s: number): ReviewEvent => ({
  name,
  time_s,
  planned_s: null,
  subject: null,
  altitude_m: null,
  speed_m_s: null,
});

const same = (t: number) => t;
const bounds = { left: 0, right: 500 };

test('the more telling event is labelled nearest, the next goes a row lower, and without a row loses its label', () => {
  const three = [event('separation', 101), event('cutoff', 100), event('throttle-up', 102)];
  const labels = eventLabels(three, same, bounds, 6, 2);
  expect(labels.map((l) => [l.item.name, l.row])).toEqual([
    ['cutoff', 0],
    ['separation', 1],
    ['throttle-up', null],
  ]);
});

test('labels at the edges are anchored inside, events outside are left out', () => {
  const labels = eventLabels(
    [event('ignition', 0), event('cutoff', 500), event('apoapsis', 900)],
    same,
    bounds,
    6,
    2,
  );
  expect(labels.map((l) => [l.item.name, l.anchor])).toEqual([
    ['cutoff', 'end'],
    ['ignition', 'start'],
  ]);
});

test('no two labels of a row touch, however events lie', () => {
  const many = Array.from({ length: 40 }, (_, i) => event('cutoff', 7 * i));
  const spans = eventLabels(many, same, bounds, 6, 2)
    .filter((l) => l.row !== null)
    .map((l) => ({
      row: l.row,
      from: l.anchor === 'start' ? l.x : l.anchor === 'end' ? l.x - 36 : l.x - 18,
    }));
  for (const a of spans) {
    for (const b of spans) {
      if (a !== b && a.row === b.row) expect(Math.abs(a.from - b.from)).toBeGreaterThanOrEqual(36);
    }
  }
  expect(spans.length).toBeGreaterThan(8);
});

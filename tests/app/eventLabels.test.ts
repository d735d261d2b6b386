import { expect, test } from 'vitest';
import { eventLabels } from '../../src/app/charts/eventLabels.ts';
import type { EventName, ReviewEvent } from '../../src/review/types.ts';

const event = (name: EventName, time_s: number): ReviewEvent => ({
  name,
  time_s,
  planned_s: null,
  subject: null,
  altitude_m: null,
  speed_m_s: null,
});

test('the more telling event keeps its label where two would overlap; both keep their ticks', () => {
  const labels = eventLabels([event('separation', 101), event('cutoff', 100)], (t) => t, 0, 500, 6);
  expect(labels.map((l) => [l.event.name, l.text])).toEqual([
    ['cutoff', 'cutoff'],
    ['separation', ''],
  ]);
});

test('labels at the edges are anchored inside, events outside are left out', () => {
  const labels = eventLabels(
    [event('ignition', 0), event('cutoff', 500), event('apoapsis', 900)],
    (t) => t,
    0,
    500,
    6,
  );
  expect(labels.map((l) => [l.event.name, l.anchor])).toEqual([
    ['cutoff', 'end'],
    ['ignition', 'start'],
  ]);
});

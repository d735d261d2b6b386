import { readFileSync, statSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { flySample, sampleFiles, samples } from '../../sample-logs/samples.ts';
import { readMission } from '../../src/mission/readCard.ts';

const folder = new URL('../../sample-logs/', import.meta.url);
const read = (name: string) => readFileSync(new URL(name, folder), 'utf8');

/** Every number of a text as printed, in order. */
const numbers = (text: string) => text.match(/-?\d+(\.\d+)?/gu) ?? [];
const decimals = (printed: string) => printed.split('.')[1]?.length ?? 0;

test('the index lists every sample with its card, in order', () => {
  const index = JSON.parse(read('index.json')) as { id: string; log: string; card: string; note: string }[];
  expect(index.map((s) => s.id)).toEqual(samples.map((s) => s.id));
  for (const { id, log, card, note } of index) {
    expect(log.startsWith(`${id}.`)).toBe(true);
    expect(card).toBe(`${id}.mission.json`);
    expect(note.length).toBeGreaterThan(20);
  }
});

describe.each(samples.map((s) => [s.id, s] as const))('%s', (_id, sample) => {
  const computed = flySample(sample);
  const { events } = computed.result;

  test('is what make.ts computes, to the last printed digit or one beside it', () => {
    for (const { name, text } of sampleFiles(sample, computed)) {
      const kept = numbers(read(name));
      const made = numbers(text);
      expect(kept.length).toBe(made.length);
      // Another build of the runtime may round a sine differently; a change of the flight moves far more.
      const moved = made.filter((text, i) => {
        const digit = 10 ** -Math.min(decimals(text), decimals(kept[i]!));
        return Math.abs(Number(text) - Number(kept[i])) > 1.01 * digit;
      });
      expect(moved).toEqual([]);
      const most = sample.set === 'ladder' ? 40_000 : 200_000;
      expect(statSync(new URL(name, folder)).size).toBeLessThan(most);
    }
  });

  test('has a card that reads, and that says it is invented', () => {
    const card = read(`${sample.id}.mission.json`);
    const mission = readMission({ card: { name: sample.id, text: card } });
    expect(mission.flight.notes).toContain('Invented flight: computed, not flown.');
  });

  test('coasts at least 70 s after the last cutoff', () => {
    const cutoff = events.filter((e) => e.name === 'cutoff').at(-1)!;
    expect(computed.result.time_s - cutoff.time_s).toBeGreaterThan(70);
    // Rows at rest follow a landing.
    const over = computed.track.time_s.at(-1)! - computed.result.time_s;
    if (sample.style.roundTrip === undefined) expect(over).toBeCloseTo(0, 9);
    else expect(over).toBeGreaterThan(9);
  });
});

test('the flights end as their notes say', () => {
  const ends = Object.fromEntries(
    samples.map((sample) => {
      const { ascent, mission, result } = flySample(sample);
      const cutoff = result.events.filter((e) => e.name === 'cutoff').at(-1)!;
      const s = ascent.observe(cutoff.time_s, cutoff.state);
      const circular = Math.sqrt(mission.world.mu_m3_s2 / s.radius_m);
      const end = {
        end: result.end,
        short: Math.round(circular - s.inertialSpeed_m_s) + 0,
        left: s.stagePropellant_kg,
        level: Math.abs(s.flightPathAngle_rad) < 1e-4,
      };
      return [sample.id, end];
    }),
  );
  expect(ends['bobstay-tansy-1']).toMatchObject({ end: 'flown', short: 0, level: true });
  expect(ends['bobstay-medlar-2']).toMatchObject({ end: 'flown', short: 11, level: true });
  expect(ends['bobstay-medlar-4']).toMatchObject({ end: 'flown', short: 351, left: 0, level: true });
  expect(ends['bobstay-teasel-1']).toMatchObject({ end: 'flown', short: 140, level: true });
  expect(ends['bobstay-teasel-1']!.left).toBeGreaterThan(1000);
  expect(ends['bobstay-teasel-2']!.end).toBe('impact');
  expect(ends['fairlead-tansy-1']).toMatchObject({ end: 'flown', short: 0, level: true });
  expect(ends['thimble-teasel-1']).toMatchObject({ end: 'flown', short: 0, level: true });
  expect(ends['homeward-tansy-1']).toMatchObject({ end: 'impact' });
  for (const [k, early] of [3, -2, 1, 0.5, -0.5].entries())
    expect(Math.abs(ends[`ladder-tansy-${k + 1}`]!.short - early)).toBeLessThan(1);
});

import { describe, expect, test } from 'vitest';
import { compareAttempts } from '../../src/attempts/compare.ts';
import { invented } from './inventedAttempts.ts';

describe('groups and order', () => {
  const attempts = [
    invented({ name: 'm2', pilot: 'Medlar', attempt: 2, margin: 30 }),
    invented({ name: 't1', pilot: 'Tansy', attempt: 1, margin: 90 }),
    invented({ name: 'm1', pilot: 'Medlar', attempt: 1, margin: 10 }),
  ];

  test('by pilot, attempts by their number', () => {
    const c = compareAttempts(attempts);
    expect(c.rows.map((r) => [r.group, r.name, r.order])).toEqual([
      ['Medlar', 'm1', 1],
      ['Medlar', 'm2', 2],
      ['Tansy', 't1', 1],
    ]);
    expect(c.groups.map((g) => [g.name, g.attempts, g.margin.median])).toEqual([
      ['Medlar', 2, 20],
      ['Tansy', 1, 90],
    ]);
  });

  test('the reference is the greatest margin unless one is asked for', () => {
    expect(compareAttempts(attempts).reference).toEqual({ name: 't1', why: 'the greatest margin' });
    expect(compareAttempts(attempts, { reference: 'm2' }).reference).toEqual({ name: 'm2', why: 'as asked' });
  });

  test.each(['vehicle', 'mission', 'world', 'payload', 'verdict'] as const)('by %s', (by) => {
    const c = compareAttempts(attempts, { by });
    expect(c.groups.length).toBe(1);
    expect(c.groups[0]!.attempts).toBe(3);
  });

  test('without numbers the dates order, without a pilot the group says so', () => {
    const dated = [
      invented({ name: 'late', date: '2031-05-02' }),
      invented({ name: 'early', date: '2031-05-01' }),
    ];
    expect(compareAttempts(dated).rows.map((r) => r.name)).toEqual(['early', 'late']);
    expect(compareAttempts([{ ...dated[0]!, pilot: null }]).rows[0]!.group).toBe('no pilot given');
  });
});

test('different payloads are set side by side, and not tested', () => {
  const c = compareAttempts([
    invented({ name: 'a', payload_kg: 3000 }),
    invented({ name: 'b', payload_kg: 6000 }),
  ]);
  expect(c.cautions[0]).toContain('differ in vehicle, payload');
  expect([c.habits, c.differences, c.bestPhases]).toEqual([[], [], []]);
  expect(c.groups[0]!.progress.slope).toBeNull();
});

test('attempts without margin are counted among the cautions', () => {
  const c = compareAttempts([invented({ name: 'a', margin: null }), invented({ name: 'b', margin: null })]);
  expect(c.reference).toBeNull();
  expect(c.cautions.some((text) => text.startsWith('2 of 2 attempts have no margin'))).toBe(true);
});

test('curves share one axis, null outside a flight', () => {
  const short = invented({ name: 'short' });
  const cut = {
    ...short,
    curve: { spent_m_s: [0, 1000], time_s: [0, 80], total_m_s: [4000, 4300], margin_m_s: [2000, 1700] },
  };
  const { curves } = compareAttempts([invented({ name: 'long' }), cut]);
  expect(curves.spent_m_s[0]).toBe(0);
  expect(curves.spent_m_s.at(-1)).toBe(5000);
  expect(curves.total_m_s[1]![0]).toBe(4000);
  expect(curves.total_m_s[1]!.at(-1)).toBeNull();
  expect(curves.margin_m_s[0]!.every((v) => v !== null)).toBe(true);
});

test('a thousand attempts make one document of some megabytes', () => {
  const pilots = ['Tansy', 'Medlar', 'Teasel'];
  const many = Array.from({ length: 1000 }, (_, k) =>
    invented({
      name: `n${k}`,
      pilot: pilots[k % 3]!,
      attempt: k,
      margin: 100 + ((k * 37) % 50),
      habits: { pitchOverAngle_deg: (k * 13) % 11 },
      total: (s) => 4000 + 0.3 * s + ((k % 7) * s) / 100,
    }),
  );
  const c = compareAttempts(many);
  expect(c.rows.length).toBe(1000);
  expect(c.groups.map((g) => g.attempts)).toEqual([334, 333, 333]);
  expect(c.habits.length).toBe(1);
  // Measured 4 MB: what a page has to hold.
  expect(JSON.stringify(c).length).toBeLessThan(6e6);
});

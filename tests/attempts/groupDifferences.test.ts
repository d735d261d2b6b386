import { expect, test } from 'vitest';
import { groupDifferences } from '../../src/attempts/groupDifferences.ts';

test('five clear of five are beyond chance, two of two never are', () => {
  const [clear] = groupDifferences([
    { name: 'Tansy', margins: [10, 11, 12, 13, 14] },
    { name: 'Medlar', margins: [1, 2, 3, 4, 5] },
  ]);
  expect(clear!.p).toBeCloseTo(2 / 252, 12);
  expect(clear!.difference_m_s).toBe(9);
  expect(clear!.text).toContain('beyond chance, if');
  const [few] = groupDifferences([
    { name: 'Tansy', margins: [10, 11] },
    { name: 'Medlar', margins: [1, 2] },
  ]);
  expect(few!.leastP).toBeCloseTo(1 / 3, 12);
  expect(few!.text).toContain('could not show');
});

test('the better one is named first, groups without margins are passed over', () => {
  const found = groupDifferences([
    { name: 'a', margins: [1, 5, 2] },
    { name: 'none', margins: [] },
    { name: 'b', margins: [3, 6, 4, 5, 2] },
  ]);
  expect(found.length).toBe(1);
  expect(found[0]!.text).toMatch(/^b has/u);
  expect(found[0]!.text).toContain('does not say that there is none');
});

test('a crowd of groups is not tested pair by pair', () => {
  const crowd = Array.from({ length: 12 }, (_, k) => ({ name: `g${k}`, margins: [k] }));
  expect(groupDifferences(crowd)).toEqual([]);
});

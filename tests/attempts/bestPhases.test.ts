import { expect, test } from 'vitest';
import { bestPhases } from '../../src/attempts/bestPhases.ts';
import { invented } from './inventedAttempts.ts';

test('the cheapest in each phase, and by how much', () => {
  const found = bestPhases([
    invented({
      name: 'a',
      phases: [
        { label: 'rise', cost_m_s: 150 },
        { label: 'turn', cost_m_s: 800 },
      ],
    }),
    invented({
      name: 'b',
      phases: [
        { label: 'rise', cost_m_s: 140 },
        { label: 'turn', cost_m_s: 830 },
      ],
    }),
    invented({ name: 'c', phases: [{ label: 'rise', cost_m_s: 160 }] }),
  ]);
  expect(found).toEqual([
    { label: 'rise', name: 'b', cost_m_s: 140, saved_m_s: 15 },
    { label: 'turn', name: 'a', cost_m_s: 800, saved_m_s: 30 },
  ]);
  expect(
    bestPhases([invented({ name: 'a', phases: [{ label: 'rise', cost_m_s: 1 }] })])[0]!.saved_m_s,
  ).toBeNull();
});

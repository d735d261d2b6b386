import { describe, expect, test } from 'vitest';
import { JettisonBank } from '../../src/refly/jettisonBank.ts';
import { Watch } from '../../src/refly/watch.ts';

const parts = [
  { name: 'cover', mass_kg: 10, time_s: 40, altitude_m: null },
  { name: 'fairing', mass_kg: 200, time_s: null, altitude_m: 90_000 },
  { name: 'tower', mass_kg: 50, time_s: 160, altitude_m: 70_000 },
];
const named = (part: { readonly name: string } | null) => part?.name ?? null;

describe('JettisonBank', () => {
  test('parts leave at their times, each once', () => {
    const bank = new JettisonBank(parts);
    bank.begin(null);
    expect(bank.next_s()).toBe(40);
    expect(bank.due(39)).toBeNull();
    expect(named(bank.due(40))).toBe('cover');
    expect(bank.due(40)).toBeNull();
    expect(bank.next_s()).toBe(160);
    expect(named(bank.due(200))).toBe('tower');
    expect(bank.next_s()).toBe(Number.POSITIVE_INFINITY);
  });

  test('or at their height, whichever comes first', () => {
    const bank = new JettisonBank(parts);
    bank.begin(null);
    const [, fairing, tower] = bank.overHeight;
    expect(named(bank.passed(tower!))).toBe('tower');
    bank.watch();
    expect(bank.overHeight.map((w) => w.active)).toEqual([true, true, false]);
    expect(named(bank.due(1000))).toBe('cover');
    expect(bank.due(1000)).toBeNull();
    expect(named(bank.passed(fairing!))).toBe('fairing');
    expect(bank.passed(new Watch(() => 1, 0))).toBeNull();
  });

  test('a flight begun in the air has thrown off what was due before; the next one has all again', () => {
    const bank = new JettisonBank(parts);
    bank.begin({ time_s: 100, altitude_m: 80_000 });
    expect(bank.due(1000)).toBeNull();
    bank.watch();
    expect(bank.overHeight.map((w) => w.active)).toEqual([false, true, false]);
    bank.begin(null);
    expect(named(bank.due(1000))).toBe('cover');
  });
});

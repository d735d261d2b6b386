import { describe, expect, test } from 'vitest';
import { checkedCardText, checkedLogText } from '../../src/exchange/checkText.ts';
import { handMadeReview } from './handMadeReview.ts';

const plain = { width: 80, colour: false } as const;

describe('what check says', () => {
  test('of a card: what is understood and what is missing, escapes removed', () => {
    const text = checkedCardText(
      'a\u001b[1m.json',
      { understood: ['world: \u0007Osselby'], missing: ['payload'] },
      plain,
    );
    expect(text).toMatch(/^a\.json ─+ understood\n· world: Osselby\n\nMissing ─+\n· payload\n$/);
  });
  test('of a log: its columns, what is left alone, and what the missing channels would give', () => {
    const source = { name: 'x.csv', bytes: 9, form: 'delimited', rows: 12, part: 1, parts: 2 } as const;
    const text = checkedLogText(
      { source, readings: handMadeReview().channels, notes: [], unusedColumns: ['battery', 'rssi'] },
      plain,
    );
    expect(text).toMatch(/^x\.csv ─+ 12 rows, 2 flights \(--part picks one\)$/m);
    expect(text).toContain('battery, rssi');
    expect(text).toContain('· mass: neither delta-v nor losses');
    expect(text).not.toContain('· altitude:');
  });
});

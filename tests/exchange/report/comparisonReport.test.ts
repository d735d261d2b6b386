import { describe, expect, test } from 'vitest';
import { compareAttempts } from '../../../src/attempts/compare.ts';
import type { Comparison } from '../../../src/attempts/types.ts';
import { comparisonReport } from '../../../src/exchange/report/comparisonReport.ts';
import { invented } from '../../attempts/inventedAttempts.ts';
import { elementsOf, readMarkup, textOf } from './readMarkup.ts';

function runs(count: number): Comparison {
  const attempts = Array.from({ length: count }, (_, k) =>
    invented({
      name: `run-${k}.csv`,
      pilot: k % 2 === 0 ? 'Tansy' : 'Medlar',
      attempt: k + 1,
      margin: 300 + 7 * k,
      habits: { pitchOverTime_s: 12 + (k % 5), pitchOverAngle_deg: 8 + k },
      total: (s) => 4000 + 0.3 * s - 0.002 * k * s,
      phases: [{ label: 'rise', cost_m_s: 150 + k }],
    }),
  );
  return compareAttempts(attempts);
}

const stitched: Comparison = {
  ...runs(12),
  stitched: [
    {
      kind: 'flown',
      group: 'Tansy',
      phases: [
        { label: 'rise', name: 'run-0.csv', own_m_s: 150, stitched_m_s: 151, gap: null, joins: true },
        {
          label: 'powered, upper',
          name: 'run-2.csv',
          own_m_s: 30,
          stitched_m_s: 130,
          gap: { time_s: 1, altitude_m: -4900, speed_m_s: 20, flightPathAngle_deg: -2.9, spent_m_s: 0 },
          joins: false,
        },
      ],
      asFlown_m_s: 310,
      steered_m_s: 390,
      steeredToGo_m_s: 0,
      best: { name: 'run-10.csv', margin_m_s: 370 },
      text: 'Tansy: flown one after another.',
    },
    { kind: 'unavailable', group: 'Medlar', text: 'Medlar: not stitched, since no flight was given.' },
  ],
};

function read(comparison: Comparison) {
  const html = comparisonReport(comparison);
  const elements = elementsOf(readMarkup(html));
  return { html, elements, headings: elements.filter((e) => e.tag === 'h2').map(textOf) };
}

describe('the report of a comparison', () => {
  test('stands alone: no script, no address, and a policy that forbids both', () => {
    const { html, elements } = read(stitched);
    for (const tag of ['script', 'link', 'img', 'iframe', 'a', 'form', 'use'])
      expect(
        elements.some((e) => e.tag === tag),
        tag,
      ).toBe(false);
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:|javascript:|data:/i);
    const policy = elements.find((e) => e.attributes['http-equiv'] === 'Content-Security-Policy');
    expect(policy?.attributes.content).toBe("default-src 'none'; style-src 'unsafe-inline'");
  });

  test('has the answer first, then table, charts, what they show, and what limits it', () => {
    const { elements, headings } = read(stitched);
    expect(textOf(elements.find((e) => e.tag === 'h1') ?? '')).toBe('12 attempts, 2 pilots: 12 on target.');
    const expected = [
      'Attempts',
      'Margins on delta-v spent',
      'Ways up',
      'Where the ways part',
      'Habits',
      'Progress',
      'Whether they differ',
      'What goes with the margin',
      'Best in each phase',
      'Best phases flown one after another',
      'What limits this comparison',
      'Method',
    ];
    expect(headings.map((h) => expected.find((e) => h.startsWith(e)))).toEqual(expected);
    const rows = elements.filter((e) => e.tag === 'th' && e.attributes.scope === 'row').map(textOf);
    for (const row of stitched.rows) expect(rows).toContain(row.name);
    const text = textOf(elements[0] ?? '');
    expect(text).toContain('Medlar: not stitched');
    expect(text).toContain('−4.9');
    expect(text).toContain('Not for go/no-go decisions');
    expect(text).toContain('Theil');
  });

  test('lengths and speeds stand in the units chosen, the names of flights as they are', () => {
    // 1 ft = 0.3048 m exactly (NIST SP 811): 377 m/s of run 11 are 1,237 ft/s; the gap of −4.9 km is −16,076 ft.
    const named: Comparison = {
      ...stitched,
      rows: stitched.rows.map((r, i) => (i === 0 ? { ...r, name: 'from 200 m.csv' } : r)),
    };
    const text = textOf(elementsOf(readMarkup(comparisonReport(named, 'ft')))[0] ?? '');
    expect(text).toContain('1,237');
    expect(text).toContain('gap: altitude, ft');
    expect(text).toContain('−16,076');
    expect(text).toContain('altitude in kft against downrange');
    expect(text).toContain('from 200 m.csv');
    const body = text.slice(0, text.indexOf('What limits this comparison'));
    expect(body).not.toMatch(/\bm\/s|\bkm\b/u);
  });

  test('names from logs and cards stay texts', () => {
    const { elements } = read(
      compareAttempts([
        invented({ name: '<script>x</script>.csv', pilot: '"><img src=x>' }),
        invented({ name: 'b' }),
      ]),
    );
    expect(elements.some((e) => e.tag === 'script' || e.tag === 'img')).toBe(false);
    expect(textOf(elements[0] ?? '')).toContain('<script>x</script>.csv');
  });

  test('a thousand attempts stay a report of under 2 MB, their curves by group', () => {
    const { html, elements } = read(runs(1000));
    expect(html.length).toBeLessThan(2e6);
    expect(elements.filter((e) => e.tag === 'path').length).toBeLessThan(40);
    expect(textOf(elements[0] ?? '')).toContain('1,000 attempts are held as');
  });
});

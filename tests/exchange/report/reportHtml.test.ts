import { describe, expect, test } from 'vitest';
import { reportHtml } from '../../../src/exchange/report/reportHtml.ts';
import { reviewFlight } from '../../../src/review/reviewFlight.ts';
import type { Analysis } from '../../../src/review/types.ts';
import { cutLog, readCardText } from '../../referenceFlights.ts';
import { reviewSix } from '../../review/reviewSix.ts';
import { handMadeReview } from '../handMadeReview.ts';
import { elementsOf, readMarkup, textOf } from './readMarkup.ts';

const short = reviewSix('osselby-short', 5);
const noStrips = { time_s: new Float64Array(0), channels: {} };

/** The report's elements and the headings of its sections, in order. */
function read(analysis: Analysis) {
  const html = reportHtml(analysis);
  const elements = elementsOf(readMarkup(html));
  const headings = elements.filter((e) => e.tag === 'h2').map(textOf);
  return { html, elements, headings };
}

/** The document with every text in it replaced. */
function withTexts<T>(value: T, text: string): T {
  if (typeof value === 'string') return text as T;
  if (Array.isArray(value)) return value.map((item: unknown) => withTexts(item, text)) as T;
  if (typeof value !== 'object' || value === null) return value;
  const kept = ['schema', 'basis', 'name', 'code', 'channel'];
  const entries = Object.entries(value).map(([k, v]) => [k, kept.includes(k) ? v : withTexts(v, text)]);
  return Object.fromEntries(entries) as T;
}

describe('the report', () => {
  test('stands alone: no script, no address, nothing to fetch, and a policy that forbids it', async () => {
    const { html, elements } = read(await short);
    const tags = new Set(elements.map((e) => e.tag));
    for (const tag of ['script', 'link', 'img', 'iframe', 'object', 'a', 'form', 'image', 'use']) {
      expect(tags.has(tag), tag).toBe(false);
    }
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(
      /https?:|\/\/[a-z]|javascript:|data:/i,
    );
    const policy = elements.find((e) => e.attributes['http-equiv'] === 'Content-Security-Policy');
    expect(policy?.attributes.content).toBe("default-src 'none'; style-src 'unsafe-inline'");
    for (const e of elements)
      for (const name of Object.keys(e.attributes)) expect(name).not.toMatch(/^on|^href|^src$/);
  });

  test('speaks the units chosen in sentences, tables and pictures, the log’s own words apart', async () => {
    const html = reportHtml(await short, 'ft');
    const text = textOf(readMarkup(html)).replaceAll('\u00a0', ' ');
    expect(text).toMatch(/Not in orbit: 1,18\d ft\/s short/);
    // From the unrounded 5,540.9 m/s: 1 ft = 0.3048 m.
    expect(text).toContain('Where 18,179 ft/s went');
    expect(html).toMatch(/aria-label="Margin against time: [\d,]+ ft\/s at lift-off/);
    expect(html).toMatch(/periapsis −[\d,]+ ft, apoapsis [\d,]+ ft/);
    expect(html.replaceAll(/<span translate="no">[^<]*<\/span>/gu, '')).not.toMatch(
      /\d[ \u00a0](?:km|m\/s)\b/u,
    );
  });

  test('has the answer first, then the evidence', async () => {
    const { elements, headings } = read(await short);
    expect(textOf(elements.find((e) => e.tag === 'h1') ?? '')).toMatch(/^Not in orbit: 361\u00a0m\/s short/);
    const expected = [
      /^Where 5,541 m\/s went/,
      /^Margin/,
      /^Ledger/,
      /^Budget/,
      /^Orbit/,
      /^Burns/,
      /^Events/,
      /^Orbit to scale/,
      /^The flight/,
      /^Path/,
      /^Assumed/,
      /^Where the quantities come from/,
      /^How the log was understood/,
      /^Method/,
    ];
    const places = expected.map((heading) => headings.findIndex((h) => heading.test(h)));
    expect(places.every((p) => p >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(textOf(elements.find((e) => e.tag === 'footer') ?? '')).toContain('Not for go/no-go decisions');
  });

  test('writes no number that is none, and no id twice', async () => {
    const { html, elements } = read(await short);
    expect(html.replace(/<style>[\s\S]*<\/style>/, '')).not.toMatch(/NaN|undefined|Infinity|\[object/);
    const ids = elements.flatMap((e) => e.attributes.id ?? []);
    expect(ids.length).toBeGreaterThan(10);
    expect(new Set(ids).size).toBe(ids.length);
    const used = [...html.matchAll(/url\(#([^)]+)\)/g)].map((m) => m[1] ?? '');
    expect(used.filter((id) => !ids.includes(id))).toEqual([]);
  });

  test('every picture says in words what it shows', async () => {
    const { elements } = read(await short);
    const pictures = elements.filter((e) => e.tag === 'svg');
    expect(pictures.length).toBeGreaterThan(10);
    for (const p of pictures) expect(p.attributes['aria-label']).toMatch(/\w{3}/);
  });

  test('no text of log or card becomes markup, whatever it says', async () => {
    const evil = `"><script>alert(1)</script><img src=x onerror=alert(2)> ' & \u202e\u0007 </style></title>`;
    const { strips } = await short;
    const { review } = await short;
    const plain = read({ review: withTexts(review, 'x'.repeat(evil.length)), strips });
    const { html, elements } = read({ review: withTexts(review, evil), strips });
    expect(elements.map((e) => e.tag)).toEqual(plain.elements.map((e) => e.tag));
    for (const hidden of ['\u0007', '\u202e']) expect(html).not.toContain(hidden);
    expect(textOf(elements.find((e) => e.tag === 'h1') ?? '')).toContain('<script>alert(1)</script>');
  });

  test('a plan brings its deviations and stands behind the curves', async () => {
    const bytes = new TextEncoder().encode(cutLog('osselby-short', undefined, 5));
    const plan = new TextEncoder().encode(cutLog('osselby-nominal', undefined, 5));
    const analysis = await reviewFlight({
      log: { name: 'short.csv', bytes },
      card: { name: 'card', text: readCardText('osselby-short') },
      plan: { name: 'nominal.csv', bytes: plan },
    });
    const { html, headings } = read(analysis);
    expect(headings.some((h) => /^Against plan nominal\.csv/.test(h))).toBe(true);
    expect(headings.some((h) => /^Cutoff of upper/.test(h))).toBe(true);
    expect(html).toContain('as planned');
  });

  test('findings are told with their cost, evidence and advice', () => {
    const { elements, headings } = read({ review: handMadeReview(), strips: noStrips });
    expect(headings.some((h) => h.startsWith('What cost most'))).toBe(true);
    const finding = textOf(elements.find((e) => e.attributes.class === 'find') ?? '');
    expect(finding).toMatch(/The turn came late 14 s to 168 s310 m\/sPitch was 52° at 40\skm/);
    expect(finding).toMatch(/Start the pitch-over at 80\sm\/s\./);
  });

  test('a log of three columns makes a report of what it shows', async () => {
    const bytes = new TextEncoder().encode(
      cutLog('earth-nominal', ['time_s', 'altitude_m', 'speed_m_s'], 10),
    );
    const { headings, html } = read(await reviewFlight({ log: { name: 'bare.csv', bytes } }));
    expect(headings).toEqual(expect.arrayContaining([expect.stringMatching(/^Delta-v to go/)]));
    expect(headings.some((h) => h.startsWith('Could not be derived'))).toBe(true);
    expect(html).not.toMatch(/NaN|undefined/);
  });

  test('a flight without curves still has its tables', () => {
    const { headings } = read({ review: handMadeReview(), strips: noStrips });
    expect(headings.some((h) => h.startsWith('Ledger'))).toBe(true);
    expect(headings.some((h) => h.startsWith('The flight'))).toBe(false);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

/** Tokens of one theme as they stand in the style sheet. */
function tokens(theme: 'light' | 'dark'): ReadonlyMap<string, string> {
  const sheet = readFileSync('src/app/theme.css', 'utf8');
  const block = new RegExp(`:root\\[data-theme="${theme}"\\] \\{([^}]*)\\}`).exec(sheet)?.[1] ?? '';
  return new Map([...block.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6})/g)].map((m) => [m[1] ?? '', m[2] ?? '']));
}

type Triple = readonly [number, number, number];

/** Linear red, green, blue of `#rrggbb` (IEC 61966-2-1). */
function linear(hex: string): Triple {
  const part = (i: number) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
}

/** Contrast ratio (WCAG 2.2, relative luminance). */
function contrast(a: string, b: string): number {
  const luminance = ([r, g, bl]: Triple) => 0.2126 * r + 0.7152 * g + 0.0722 * bl;
  const [low, high] = [luminance(linear(a)), luminance(linear(b))].toSorted((x, y) => x - y);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

/** Full colour blindness in linear RGB (Machado, Oliveira and Fernandes 2009, table 1, severity 1.0). */
const blindness: Readonly<Record<string, readonly Triple[]>> = {
  none: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** CIE L*a*b* under D65 (CIE 15) of a colour as seen with a blindness. */
function lab(hex: string, seen: readonly Triple[]): Triple {
  const rgb = linear(hex);
  const [r, g, b] = seen.map((row) => Math.max(0, row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2]));
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const [R = 0, G = 0, B = 0] = [r, g, b];
  const x = f((0.4124564 * R + 0.3575761 * G + 0.1804375 * B) / 0.95047);
  const y = f(0.2126729 * R + 0.7151522 * G + 0.072175 * B);
  const z = f((0.0193339 * R + 0.119192 * G + 0.9503041 * B) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function distance(a: string, b: string, seen: readonly Triple[]): number {
  const [p, q] = [lab(a, seen), lab(b, seen)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

/** Causes that stand in one picture: the ledger's, and those of the margin's slope. */
const together = [
  ['speed', 'gravity', 'steering', 'drag', 'pressure', 'hold'],
  ['direction', 'time', 'pressure', 'drag', 'drift'],
] as const;

/** Smallest distance measured is 17.1 (light) and 21.6 (dark), beside hold-down 14.6 and 17.3 (CIE 1976). */
const least = { pair: 16, withHoldDown: 14 };

describe.each(['light', 'dark'] as const)('%s theme', (theme) => {
  const all = tokens(theme);
  const colour = (name: string) => all.get(name) ?? '';

  test('text reaches 4.5:1 on the sheet', () => {
    for (const name of all.keys()) {
      if (!/^(ink|muted|short|reached|cause-.*)$/.test(name)) continue;
      expect(contrast(colour(name), colour('sheet')), name).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('labels reach 4.5:1 on every cause', () => {
    for (const name of all.keys()) {
      if (!name.startsWith('cause-')) continue;
      expect(contrast(colour('on-cause'), colour(name)), name).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('edges of controls reach 3:1 on the sheet', () => {
    expect(contrast(colour('edge'), colour('sheet'))).toBeGreaterThanOrEqual(3);
  });

  test('phase labels reach 4.5:1 on their ground', () => {
    for (const ground of ['phase', 'phase-other']) {
      expect(contrast(colour('ink'), colour(ground))).toBeGreaterThanOrEqual(4.5);
    }
  });

  test.each(Object.entries(blindness))('causes in one picture differ with %s', (_name, seen) => {
    for (const group of together) {
      group.forEach((a, i) => {
        for (const b of group.slice(i + 1)) {
          const apart = distance(colour(`cause-${a}`), colour(`cause-${b}`), seen);
          const wanted = a === 'hold' || b === 'hold' ? least.withHoldDown : least.pair;
          expect(apart, `${a} and ${b}`).toBeGreaterThanOrEqual(wanted);
        }
      });
    }
  });
});

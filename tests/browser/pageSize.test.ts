import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';

const folder = 'dist/page';

test('the whole page is under 120 kB gzip, sample flights aside', () => {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((f) => f.isFile())
    .map((f) => join(f.parentPath, f.name))
    .filter((f) => !f.startsWith(join(folder, 'samples')));
  const sizes = files.map((f) => [f, gzipSync(readFileSync(f), { level: 9 }).length] as const);
  const total = sizes.reduce((sum, [, size]) => sum + size, 0);
  expect(total, sizes.map(([f, size]) => `${f} ${size}`).join('\n')).toBeLessThan(120_000);
});

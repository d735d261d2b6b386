import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const command = fileURLToPath(new URL('../../dist/cli/lossbook.js', import.meta.url));
const sample = fileURLToPath(new URL('../../sample-logs/bobstay-medlar-4.csv', import.meta.url));

function lossbook(...args: string[]) {
  return spawnSync(process.execPath, [command, ...args], {
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
}

test('refly --best: the model’s error, the best ascent, and a plan that check and review take', () => {
  const folder = mkdtempSync(join(tmpdir(), 'lossbook-'));
  try {
    const plan = join(folder, 'best.plan.csv');
    const { status, stdout } = lossbook('refly', sample, '--best', '--out', plan, '--json');
    expect(status).toBe(0);
    const document = JSON.parse(stdout);
    // The sample was computed by the same equations of motion; its log is rounded. Measured: 0.01 m/s, 3 m.
    expect(Math.abs(document.asFlown.speedError_m_s)).toBeLessThan(0.5);
    expect(Math.abs(document.asFlown.altitudeError_m)).toBeLessThan(50);
    expect(document.best.reachesTarget).toBe(true);
    expect(document.best.margin_m_s).toBeGreaterThan(78);
    expect(readFileSync(plan, 'utf8').split('\r\n')[0]).toContain('pitch_deg');
    expect(lossbook('check', plan).status).toBe(0);
    const text = lossbook('refly', sample, '--plan', plan);
    expect(text.status).toBe(0);
    expect(text.stdout).toContain('Against the plan');
    for (const line of text.stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  } finally {
    rmSync(folder, { recursive: true });
  }
}, 120_000);

test('refly wants one log, and --out wants --best', () => {
  expect(lossbook('refly').status).toBe(2);
  expect(lossbook('refly', sample, '--out', 'x.plan.csv').status).toBe(2);
});

/**
 * Prints how near the ledger comes to the truth when the reference flights are read through a hand pilot's
 * instruments: 200 seeds of noise and of the card's errors, entry by entry. Built and run like the sample flights:
 *   npx vite build --ssr tests/bench/accuracy.ts --outDir node_modules/.bench && node node_modules/.bench/accuracy.js
 */
import { type EntryError, entryNames, ledgerErrors, quantile } from '../ledgerErrors.ts';
import { instruments, tenths } from '../noisyFlights.ts';
import { referenceNames } from '../referenceFlights.ts';

const seeds = Number(process.env.SEEDS ?? 200);

for (const [title, disturbance] of [
  ['altitude 5 m, speed 1 m/s, pitch 0.4°, mass in 10 kg, 5 Hz', instruments],
  ['altitude in steps of 100 m, else the same', tenths],
] as const) {
  for (const frame of ['ground', 'inertial'] as const) {
    console.log(
      `\n${title}; ${frame} frame, ${seeds} seeds × ${referenceNames.length} flights, |error| in m/s`,
    );
    console.log(
      'entry          n     mean    p50     p90     max   covered  half-width p50  of ideal, worst  least covered flight',
    );
    const all: { name: string; errors: Partial<Record<string, EntryError>> }[] = [];
    for (const name of referenceNames) {
      for (let seed = 0; seed < seeds; seed++)
        all.push({ name, errors: await ledgerErrors(name, disturbance, seed, frame) });
    }
    let covered = 0;
    let count = 0;
    for (const entry of entryNames) {
      const rows = all.flatMap(({ name, errors }) =>
        errors[entry] === undefined ? [] : [{ name, ...errors[entry] }],
      );
      if (rows.length === 0) continue;
      const sizes = rows.map((r) => Math.abs(r.error)).sort((a, b) => a - b);
      const halves = rows.map((r) => r.half).sort((a, b) => a - b);
      const hit = rows.filter((r) => r.covered).length;
      covered += hit;
      count += rows.length;
      const worst = Math.max(...rows.map((r) => r.half / r.ideal));
      const least = Math.min(
        ...referenceNames.map((name) => {
          const own = rows.filter((r) => r.name === name);
          return own.filter((r) => r.covered).length / own.length;
        }),
      );
      const mean = sizes.reduce((a, b) => a + b, 0) / sizes.length;
      console.log(
        entry.padEnd(13),
        String(rows.length).padStart(5),
        ...[mean, quantile(sizes, 0.5), quantile(sizes, 0.9), sizes[sizes.length - 1]!].map((x) =>
          x.toFixed(2).padStart(7),
        ),
        `${((100 * hit) / rows.length).toFixed(1)} %`.padStart(9),
        quantile(halves, 0.5).toFixed(2).padStart(10),
        `${(100 * worst).toFixed(3)} %`.padStart(16),
        `${(100 * least).toFixed(1)} %`.padStart(16),
      );
    }
    console.log(`all entries: ${((100 * covered) / count).toFixed(2)} % covered`);
  }
}

import { LossbookError } from '../errors.ts';

/** What is read at most. A log of 1,000,000 rows and twelve columns has about 100 MB. */
export const logLimits = {
  /** Size of the file as given, bytes. */
  fileBytes: 512e6,
  /** Size after unpacking, bytes: a small gzip file can hold far more than fits into memory. */
  textBytes: 512e6,
  rows: 4_000_000,
  columns: 1000,
  /** Nesting of JSON below the table. */
  jsonDepth: 6,
} as const;

/** @throws LossbookError `log-too-large` when `value` is over the limit of its kind. */
export function withinLimit(kind: keyof typeof logLimits, value: number, file: string): void {
  const limit = logLimits[kind];
  if (value <= limit) return;
  const inBytes = kind === 'fileBytes' || kind === 'textBytes';
  const written = (x: number): string =>
    inBytes ? `${Math.round(x / 1e6)} MB` : `${x.toLocaleString('en-US')} ${kind}`;
  throw new LossbookError(
    'log-too-large',
    {
      // While unpacking only the part read so far is known.
      size: kind === 'textBytes' ? `more than ${written(limit)}` : written(value),
      limit: written(limit),
    },
    { file },
  );
}

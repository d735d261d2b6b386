/** Five runs each of three pilots on the same rocket, to be set side by side. */
interface LadderAttempt {
  readonly pilot: 'Tansy' | 'Medlar' | 'Teasel';
  readonly attempt: number;
  readonly date: string;
  readonly notes: string;
  readonly note: string;
  readonly kick_deg: number;
  readonly kickSpeed_m_s: number;
  readonly speedMissed_m_s: number;
}

type Run = readonly [kick_deg: number, kickSpeed_m_s: number, speedMissed_m_s: number, note: string];

/** Tansy is steady, Medlar lofts less each time, Teasel is never twice the same. */
const runs: Readonly<Record<LadderAttempt['pilot'], readonly Run[]>> = {
  Tansy: [
    [10.1, 50, 3, 'A clean first run, stopped 3 m/s early.'],
    [10.9, 52, -2, 'Tipped a little more; 2 m/s too long.'],
    [10.5, 49, 1, 'Between the two before.'],
    [10.7, 51, 0.5, 'Hardly to be told from the run before.'],
    [11, 50, -0.5, 'The flattest of Tansy’s five.'],
  ],
  Medlar: [
    [5.8, 46, 14, 'Lofted high, and stopped early by hand.'],
    [6.5, 47, 10, 'Still steep, and stopped early again.'],
    [7.1, 48, 9, 'A degree flatter than the first.'],
    [8.2, 46, 5, 'Flatter again; the margin shows it.'],
    [8.9, 48, 4, 'The best of Medlar’s five.'],
  ],
  Teasel: [
    [12.4, 58, 22, 'Tipped hard and late.'],
    [8.3, 40, -11, 'Tipped early and little, burnt too long.'],
    [11.6, 55, 8, 'Tipped hard again, less late.'],
    [9.4, 62, -6, 'Late and gentle, burnt too long.'],
    [10.2, 44, 12, 'Near Tansy’s way, but stopped early.'],
  ],
};

export const ladderAttempts: readonly LadderAttempt[] = (['Tansy', 'Medlar', 'Teasel'] as const).flatMap(
  (pilot, p) =>
    runs[pilot].map(
      ([kick_deg, kickSpeed_m_s, speedMissed_m_s, note], k): LadderAttempt => ({
        pilot,
        attempt: k + 1,
        date: `2031-09-${String(2 + 5 * k + p).padStart(2, '0')}`,
        notes: 'One of fifteen runs for comparison.',
        note,
        kick_deg,
        kickSpeed_m_s,
        speedMissed_m_s,
      }),
    ),
);

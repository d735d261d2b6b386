import { expect, test } from 'vitest';
import { whyNotText } from '../../src/exchange/whyNotText.ts';

test('the answer, what had been spent by then, and the other changes', () => {
  const change = {
    kind: 'more-tilt',
    amount: 0.22,
    unit: 'share',
    text: 'tilt 22 % farther',
    apoapsisAltitude_m: 170_700,
    periapsisAltitude_m: 110_900,
    nineTenthsPeriapsisAltitude_m: 58_400,
  } as const;
  const lines = whyNotText(
    {
      latest_s: 123,
      outOfReach_s: 112,
      spentThen_m_s: 1700,
      wastedThen_m_s: 150,
      changes: [change, { ...change, kind: 'less-payload', unit: 'kg', text: 'carry 880 kg less' }],
      text: 'The answer.',
    },
    100,
  );
  expect(lines).toEqual([
    'The answer.',
    'By then 1,700 m/s were spent, 150 m/s more than the plan for the same progress.',
    '· or carry 880 kg less: 171 × 111 km',
  ]);
});

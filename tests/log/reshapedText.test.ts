import { expect, test } from 'vitest';
import { reshapedText } from '../../src/log/reshapedText.ts';

test('labelled values, in any order and with gaps', () => {
  expect(reshapedText('t=0 alt=1.5\nalt=2 t=1\nt=2 alt=3 v=4\n')).toBe(
    't\talt\tv\n0\t1.5\t\n1\t2\t\n2\t3\t4\n',
  );
  expect(reshapedText('t: 0, alt (m): -1e3\nt: 1, alt (m): 2\n')).toBe('t\talt (m)\n0\t-1e3\n1\t2\n');
});

test('one line for each channel is turned', () => {
  const rise = Array.from({ length: 12 }, (_, i) => i);
  const turned = reshapedText(['t', 'h', 'v'].map((name) => [name, ...rise].join(',')).join('\n'));
  expect(turned?.split('\n').slice(0, 3)).toEqual(['t\th\tv', '0\t0\t0', '1\t1\t1']);
});

test.each(['t,h,v\n0,1,2\n1,2,3\n', 'a letter\nwith: words\n', '', '12:00:01,5\n12:00:02,6\n', 'x = y\n'])(
  '%j is left alone',
  (text) => {
    expect(reshapedText(text)).toBeNull();
  },
);

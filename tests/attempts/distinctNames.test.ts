import { expect, test } from 'vitest';
import { distinctNames } from '../../src/attempts/distinctNames.ts';

test('the second of one name is told apart', () => {
  expect(distinctNames(['a', 'b', 'a', 'a'])).toEqual(['a', 'b', 'a (2)', 'a (3)']);
});

import { expect, test } from 'vitest';
import { missingChannels } from '../../src/exchange/missingChannels.ts';

test('what a log lacks is said with what that costs; another channel for the same thing will do', () => {
  const six = ['time', 'altitude', 'speed', 'mass', 'pitch', 'throttle'] as const;
  expect(missingChannels(six.map((channel) => ({ channel })))).toEqual([
    'position or heading: no inclination, and the turn of the world beneath the path is reckoned',
  ]);
  const states = ['positionX', 'velocityX'] as const;
  const missing = missingChannels(states.map((channel) => ({ channel })));
  expect(missing.map((m) => m.split(':')[0])).toEqual(['mass', 'pitch', 'throttle or thrust']);
});

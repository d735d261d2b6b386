import { expect, test } from 'vitest';
import * as engine from '../src/index.ts';

test('the engine offers these and nothing else', () => {
  expect(Object.keys(engine).sort()).toEqual([
    'LossbookError',
    'channelsCsv',
    'describeMission',
    'readLog',
    'readMission',
    'reviewFlight',
    'reviewJson',
    'reviewText',
  ]);
});

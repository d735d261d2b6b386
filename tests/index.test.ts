import { expect, test } from 'vitest';
import * as engine from '../src/index.ts';

test('the engine offers these and nothing else', () => {
  expect(Object.keys(engine).sort()).toEqual([
    'LossbookError',
    'channelsCsv',
    'describeMission',
    'oem',
    'opm',
    'readLog',
    'readMission',
    'reportHtml',
    'review',
    'reviewJson',
    'reviewText',
  ]);
});

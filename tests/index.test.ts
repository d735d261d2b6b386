import { expect, test } from 'vitest';
import * as engine from '../src/index.ts';

test('the engine offers these and nothing else', () => {
  expect(Object.keys(engine).sort()).toEqual([
    'LossbookError',
    'attemptOf',
    'blobSource',
    'channelsCsv',
    'compareAttempts',
    'comparisonText',
    'describeMission',
    'oem',
    'opm',
    'parquet',
    'plainJson',
    'planAttemptOf',
    'readLog',
    'readLogStream',
    'readMission',
    'reportHtml',
    'review',
    'reviewJson',
    'reviewText',
  ]);
});

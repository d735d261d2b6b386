import { expect, test } from 'vitest';
import { type Analyst, askWhile } from '../../src/app/analyst.ts';

test('work that was overtaken asks no more, and its question is never answered', async () => {
  const asked: string[] = [];
  const ask: Analyst['ask'] = (task) => {
    asked.push(task);
    return Promise.resolve('log' as never);
  };
  let stands = true;
  const asking = askWhile({ ask }, () => stands);
  const file = { name: 'a.csv', blob: new Blob([]) };
  expect(await asking('kind', file)).toBe('log');
  stands = false;
  const later = asking('kind', file).then(() => 'answered');
  expect(await Promise.race([later, new Promise((done) => setTimeout(done, 5, 'silent'))])).toBe('silent');
  expect(asked).toEqual(['kind']);
});

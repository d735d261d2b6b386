import { expect, test } from 'vitest';
import { begin, change, redo, settle, undo } from '../../../src/app/planEditor/history.ts';

test('steps are taken back and made again', () => {
  const three = change(change(begin(1), 2, null), 3, null);
  const back = undo(three);
  expect(back?.now).toBe(2);
  expect(back && redo(back)?.now).toBe(3);
  expect(redo(three)).toBeNull();
  expect(undo(begin(1))).toBeNull();
});

test('a change that goes on is one step, until it is settled', () => {
  const typed = change(change(begin('9'), '90', 'cell'), '905', 'cell');
  expect(undo(typed)?.now).toBe('9');
  const again = change(settle(typed), '9', 'cell');
  expect(undo(again)?.now).toBe('905');
});

test('a new change ends what was taken back', () => {
  const back = undo(change(begin(1), 2, null));
  expect(back && redo(change(back, 5, null))).toBeNull();
});

test('the oldest steps are let go', () => {
  let history = begin(0);
  for (let i = 1; i <= 300; i++) history = change(history, i, null);
  expect(history.past.length).toBe(200);
  expect(history.past[0]).toBe(100);
});

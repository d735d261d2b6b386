import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BLOCK, blockOf, Course, courseOf, lastOfBlock } from '../../src/log/course.ts';

/** Columns that hold, turn, leap and run on, so that every answer comes in both senses. */
const columns = fc
  .array(
    fc.record({
      change: fc.oneof(fc.constant(0), fc.double({ min: -2, max: 2, noNaN: true }), fc.constant(1)),
      count: fc.integer({ min: 1, max: 50 }),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .chain((stretches) =>
    fc.double({ min: -40, max: 40, noNaN: true }).map((start) => {
      const values = [start];
      for (const { change, count } of stretches)
        for (let k = 0; k < count; k++) values.push(values.at(-1)! + change);
      return Float64Array.from(values);
    }),
  );

const changesOf = (values: Float64Array): number[] => [...values.slice(1)].map((x, i) => x - values[i]!);

test('what it says of a column is so', () => {
  fc.assert(
    fc.property(columns, (values) => {
      const course = new Course(values);
      const changes = changesOf(values);
      let [hold, longest] = [1, 1];
      for (const d of changes) {
        hold = d === 0 ? hold + 1 : 1;
        longest = Math.max(longest, hold);
      }
      expect(course.whole).toBe(true);
      expect(course.rises).toBe(changes.every((d) => d > 0));
      expect(course.largestRise).toBe(Math.max(...changes));
      expect(course.deepestFall).toBe(Math.min(...changes));
      expect(course.longestHold).toBe(longest);
      for (let row = 1; row < values.length; row++) {
        const block = blockOf(row);
        const from = block * BLOCK;
        const here = changes.slice(from, from + BLOCK);
        const both = changes.slice(from, from + 2 * BLOCK);
        expect(lastOfBlock(row)).toBe(from + BLOCK);
        expect(course.holdsIn(block)).toBe(here.includes(0));
        expect(course.goesOneWay(block)).toBe(both.every((d) => d >= 0) || both.every((d) => d <= 0));
        const [a, b] = [Math.abs(values[row - 1]!), Math.abs(values[row]!)];
        if (Math.abs(values[row]! - values[row - 1]!) >= 0.4 * Math.min(a, b))
          expect(course.mayLeapIn(block)).toBe(true);
        if (course.mayLeapIn(block)) expect(course.mayLeap).toBe(true);
      }
    }),
  );
});

test('a smooth column far from zero does not leap', () => {
  const course = courseOf(Float64Array.from({ length: 1000 }, (_, i) => 500 + i));
  expect(course.mayLeap).toBe(false);
  expect(course.rises).toBe(true);
});

test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
  'one %d anywhere makes it not whole',
  (x) => {
    for (const at of [0, 1, 20, 21, 57, 99]) {
      const values = Float64Array.from({ length: 100 }, (_, i) => i);
      values[at] = x;
      expect(courseOf(values).whole).toBe(false);
      expect(courseOf(values).rises).toBe(false);
    }
  },
);

test('nothing, and a single value', () => {
  expect(courseOf(new Float64Array(0)).whole).toBe(false);
  const one = courseOf(Float64Array.of(3));
  expect([one.whole, one.rises, one.mayLeap]).toEqual([true, true, false]);
});

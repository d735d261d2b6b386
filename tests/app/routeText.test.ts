import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseRoute, routeHash } from '../../src/app/routeText.ts';

test('an address is a screen and how it is looked at', () => {
  expect(parseRoute('#/review?flight=sample:x&frame=inertial')).toEqual({
    screen: 'review',
    view: { flight: 'sample:x', frame: 'inertial' },
  });
  expect(parseRoute('')).toEqual({ screen: '', view: {} });
});

test('what is written is read back', () => {
  const view = fc.dictionary(fc.string({ minLength: 1 }), fc.string());
  fc.assert(
    fc.property(view, (looked) => {
      const read = parseRoute(routeHash({ screen: 'review', view: looked }));
      expect(Object.entries(read.view).toSorted()).toEqual(Object.entries(looked).toSorted());
    }),
  );
});

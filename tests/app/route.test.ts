import { afterEach, beforeEach, expect, test, vi } from 'vitest';

/** The browser's address: it changes at once, and is told of in a later task. */
function address(hash: string) {
  const at = { hash };
  vi.stubGlobal('location', at);
  vi.stubGlobal('addEventListener', () => {});
  vi.stubGlobal('history', {
    replaceState: (_state: unknown, _title: string, next: string) => {
      at.hash = next;
    },
  });
  return at;
}

beforeEach(() => vi.resetModules());
afterEach(() => vi.unstubAllGlobals());

test('a view changed right after another screen was gone to is that screen’s', async () => {
  const at = address('#/review?flight=one&from=3');
  const { go, route, setView } = await import('../../src/app/route.ts');
  go('review', { flight: 'two' });
  setView({ from: '5' });
  expect(at.hash).toBe('#/review?flight=two&from=5');
  expect(route.peek()).toEqual({ screen: 'review', view: { flight: 'two', from: '5' } });
});

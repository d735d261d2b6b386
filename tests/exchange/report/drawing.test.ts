import { expect, test } from 'vitest';
import {
  captioned,
  draw,
  drawingText,
  inked,
  keyRow,
  pathThrough,
  picture,
  px,
  stacked,
} from '../../../src/exchange/report/drawing.ts';

test('texts and attributes of a log never become markup', () => {
  const text = drawingText(draw('text', { x: 1, 'aria-label': '"><script>' }, '<b>&'));
  expect(text).toBe('<text x="1" aria-label="&quot;&gt;&lt;script&gt;">&lt;b&gt;&amp;</text>');
});

test('attributes and children that are null are left out, lists laid flat', () => {
  const drawing = draw('g', { x: null, y: 2 }, null, [draw('a', {}), null], 'b');
  expect(drawing.attributes).toEqual({ y: 2 });
  expect(drawing.children).toHaveLength(2);
});

test('tokens are resolved for a file of its own, in every depth', () => {
  const drawing = draw('g', { fill: 'var(--ink)' }, draw('path', { stroke: 'var(--short)' }));
  const text = drawingText(inked(drawing, (token) => `<${token}>`));
  expect(text).toBe('<g fill="&lt;--ink&gt;"><path stroke="&lt;--short&gt;"></path></g>');
});

test('a saved picture has a ground, its title and whose flight it is', () => {
  const text = drawingText(
    captioned(picture(100, 50, 'A curve', draw('path', {})), 'Margin', 'm/s', 'Long Ladder'),
  );
  expect(text).toContain('aria-label="A curve"');
  expect(text).toMatch(/<rect width="132" height="\d+" fill="var\(--sheet\)">/);
  expect(text).toContain('Margin<tspan');
  expect(text).toContain('>Long Ladder</text>');
});

test('coordinates to a tenth of a pixel', () => {
  expect([px(12), px(12.04), px(12.06), px(-0.5)]).toEqual(['12', '12', '12.1', '-0.5']);
  expect(
    pathThrough([
      [0, 1],
      [2, 3.25],
    ]),
  ).toBe('M0 1L2 3.3');
});

test('pictures stand under each other, told by the first', () => {
  const both = stacked([
    picture(100, 50, 'A curve', 'a'),
    keyRow(100, 10, [{ label: 'drag', colour: 'var(--cause-drag)', look: 'area' }]),
  ]);
  expect(both.attributes).toMatchObject({ width: 100, height: 72, 'aria-label': 'A curve' });
  expect(drawingText(both)).toMatch(/translate\(0 50\).*fill="var\(--cause-drag\)".*>drag</);
});

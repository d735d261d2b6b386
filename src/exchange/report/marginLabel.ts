/** Mean width of a letter of the chart's 13 px bold text, for keeping labels apart, px. */
export const letter = 7.4;

/** A label of the chart, which stays readable over its lines. */
export const mark = {
  'font-size': 13,
  'font-weight': 650,
  'paint-order': 'stroke',
  stroke: 'var(--sheet)',
  'stroke-width': 4,
  'stroke-linejoin': 'round',
};

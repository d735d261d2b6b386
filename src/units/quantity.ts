/** What a channel measures, which decides the units it may be written in. */
export type Quantity =
  | 'time'
  | 'length'
  | 'speed'
  | 'angle'
  | 'mass'
  | 'force'
  | 'pressure'
  | 'acceleration'
  | 'temperature'
  | 'ratio'
  | 'count'
  | 'text';

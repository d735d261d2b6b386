/**
 * Colours by meaning, as the report prints them: the page's light theme (src/app/theme.css has the same values, which
 * a test holds together). Hue is the cause's own; lightness sets those apart that colour blindness would merge.
 */
export const palette = {
  ground: '#eeece4',
  sheet: '#fcfbf7',
  ink: '#17202e',
  muted: '#5c6570',
  rule: '#dcd9cf',
  edge: '#8a8d8c',
  phase: '#e3dfd2',
  'phase-other': '#efede3',
  'phase-shade': '#f4f2ea',
  framed: '#e9e3cf',
  air: '#dfe8ee',
  'ground-disc': '#e8e4d8',
  short: '#b2502a',
  reached: '#01458c',
  area: '#e4e8ea',
  'cause-speed': '#01458c',
  'cause-gravity': '#a1482d',
  'cause-steering': '#5b3064',
  'cause-drag': '#278066',
  'cause-pressure': '#956b03',
  'cause-hold': '#7b163d',
  'cause-frame': '#46505c',
  'cause-unexplained': '#6b7280',
  'cause-direction': '#43454a',
  'cause-time': '#5d7689',
  'cause-drift': '#602808',
  'on-cause': '#ffffff',
} as const;

/** Families that every machine has one of; nothing is fetched. */
export const fonts = {
  sans: 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "DejaVu Sans", sans-serif',
  serif:
    'Charter, "Iowan Old Style", "Palatino Linotype", "Source Serif 4", "Noto Serif", "DejaVu Serif", Georgia, serif',
} as const;

import { stitchedNote } from '../comparisonWords.ts';
import { methodNotes } from './methodNotes.ts';

/** How the figures of a comparison are defined, each with its source. */
export const comparisonNotes: readonly { readonly term: string; readonly note: string }[] = [
  ...methodNotes.filter(({ term }) => ['Figures', 'Projected total and margin'].includes(term)),
  {
    term: 'Where the ways part',
    note: 'The first stretch of delta-v spent on which an attempt’s projected total differs from the reference’s by more than both 95 % intervals together, and at least 2 m/s, until the difference has stopped growing. The cost is the difference at its end.',
  },
  {
    term: 'Habits',
    note: 'Pitch-over time from lift-off; tilt from the vertical ten seconds after pitch-over began; thrust-to-weight at the greatest dynamic pressure; mean angle of attack while the dynamic pressure is a quarter of its greatest or more; speed at the ascent’s cutoff less that of an orbit of the target’s energy there. Shown: the median and half the distance between the quartiles (Hyndman and Fan 1996, type 7).',
  },
  {
    term: 'Progress',
    note: 'Median of the slopes of all pairs of attempts (Theil 1950; Sen 1968), its interval from Kendall’s score, counted out for up to 60 attempts without ties; so few attempts may carry none.',
  },
  {
    term: 'What goes with the margin',
    note: 'Spearman’s rank correlation; p is the share of all orders (of nine attempts or more: of orders drawn by lot) with a correlation as strong, corrected for the number of habits looked at (Holm 1979).',
  },
  {
    term: 'Whether they differ',
    note: 'Permutation test of the difference of mean margins (Fisher 1935; Efron and Tibshirani 1993, chapter 15): all ways to deal the attempts out, drawn by lot beyond 200,000, corrected for the number of pairs (Holm 1979). Samples too small to reach p 0.05 at all are said to be so.',
  },
  {
    term: 'Best in each phase',
    note: 'The smallest rise of the projected total in that phase; an ascent that broke off is not ranked in its last phase. A cheap phase may leave the next one a dear start: only flying the phases one after another tells.',
  },
  { term: 'Best phases flown one after another', note: stitchedNote },
];

/** One stop of the guided first review. */
export interface GuideStep {
  /** What it points at, as a selector of the review screen. */
  readonly at: string;
  readonly title: string;
  readonly text: string;
}

/** In the order in which a review is read. */
export const guideSteps: readonly GuideStep[] = [
  {
    at: '.verdict h1',
    title: 'The verdict',
    text: 'Every review begins with its answer in one sentence. This flight ran its tanks dry and missed orbit: the coloured figure says by how much, the rest from when on nothing could save it.',
  },
  {
    at: '.ledger-bar',
    title: 'The bar: where the delta-v went',
    text: 'The whole bar is what the engines gave. Speed gained is what became of it; the rest is what gravity, steering, drag and the air took. Point at a piece, or Tab to it, for its figure and interval.',
  },
  {
    at: '.hero',
    title: 'The margin: when it was lost',
    text: 'The curve is what could still be wasted and orbit reached all the same. Where it crosses zero, orbit went out of reach. The band beneath says what it was lost to, second by second.',
  },
  {
    at: '.ledger',
    title: 'The ledger: each entry with its honesty',
    text: 'Each figure has a 95 % interval and a basis: measured, derived, identified or assumed. What the books cannot explain stands in a line of its own. Dotted words are explained when you press them; so is everything under “Terms”.',
  },
  {
    at: '.findings, .tables',
    title: 'What cost most',
    text: 'Findings are ranked by what they cost, with the evidence and one piece of advice. Choose one, and every chart shows its stretch of the flight.',
  },
  {
    at: '.strips',
    title: 'The strips: look for yourself',
    text: 'All charts share one time and one cursor. Here the pitch stays high far too long, and the flight path with it: that is where the margin went. Now give a log of your own on the Logbook screen.',
  },
];

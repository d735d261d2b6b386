import type { FunctionComponent } from 'preact';
import { current, flights, unread } from '../state.ts';
import { LogbookScreen } from './LogbookScreen.tsx';
import { lazyScreen } from './lazyScreen.tsx';

/** A screen of the page. It stands in the navigation only while it has something to show. */
export interface ScreenEntry {
  /** As in the address: `#/NAME`. */
  readonly name: string;
  /** As in the navigation. */
  readonly label: string;
  readonly title: () => string;
  readonly offered: () => boolean;
  /** What the address carries when the navigation leads here. */
  readonly view: () => Readonly<Record<string, string>>;
  readonly Screen: FunctionComponent;
}

/** The flight that a screen is about, as the address carries it. */
function flightView(): Readonly<Record<string, string>> {
  return current.value === null ? {} : { flight: current.value.source.id };
}

/** Fetches the review's screen; asked for while the flight is still being read, it is there when that is done. */
export const loadReview = () => import('./ReviewScreen.tsx').then((m) => m.ReviewScreen);

/** In the order of the navigation; the first that is offered is the home. */
export const screens: readonly ScreenEntry[] = [
  {
    name: 'logbook',
    label: 'Logbook',
    title: () => 'Logbook',
    offered: () => true,
    view: () => ({}),
    Screen: LogbookScreen,
  },
  {
    name: 'review',
    label: 'Review',
    title: () => current.value?.analysis.review.verdict.text ?? 'Review',
    offered: () => current.value !== null,
    view: () => ({ flight: current.value?.source.id ?? '' }),
    Screen: lazyScreen(loadReview),
  },
  {
    name: 'plan',
    label: 'Against plan',
    title: () => 'Against plan',
    offered: () => current.value !== null,
    view: () => flightView(),
    Screen: lazyScreen(() => import('./PlanScreen.tsx').then((m) => m.PlanScreen)),
  },
  {
    name: 'attempts',
    label: 'Attempts',
    title: () => 'Attempts',
    offered: () => flights.value.length > 0,
    view: () => ({}),
    Screen: lazyScreen(() => import('./AttemptsScreen.tsx').then((m) => m.AttemptsScreen)),
  },
  {
    name: 'way-down',
    label: 'Way down',
    title: () => 'Way down',
    offered: () => current.value !== null,
    view: () => flightView(),
    Screen: lazyScreen(() => import('./WayDownScreen.tsx').then((m) => m.WayDownScreen)),
  },
  {
    name: 'card',
    label: 'Mission card',
    title: () => 'Mission card',
    offered: () => true,
    view: () => flightView(),
    Screen: lazyScreen(() => import('./CardScreen.tsx').then((m) => m.CardScreen)),
  },
  {
    name: 'plan-editor',
    label: 'Plan',
    title: () => 'Plan',
    offered: () => true,
    view: () => flightView(),
    Screen: lazyScreen(() => import('./PlanEditorScreen.tsx').then((m) => m.PlanEditorScreen)),
  },
  {
    name: 'columns',
    label: 'Columns',
    title: () => 'Columns',
    offered: () => current.value !== null || unread.value !== null,
    view: () => flightView(),
    Screen: lazyScreen(() => import('./ColumnsScreen.tsx').then((m) => m.ColumnsScreen)),
  },
];

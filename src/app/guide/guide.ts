import { computed, signal } from '@preact/signals';
import { current, flights, openFlight } from '../state.ts';
import { guideSteps } from './guideSteps.ts';

const kept = 'lossbook-guide';

function wasSeen(): boolean {
  try {
    return localStorage.getItem(kept) !== null;
  } catch {
    return false;
  }
}

/** True once the guide was taken or declined in this browser. */
export const guideSeen = signal(wasSeen());

/** Place of the stop that is shown; null while the guide rests. */
export const guideStop = signal<number | null>(null);

/** Not offered again, in this browser. */
export function dismissGuide(): void {
  guideStop.value = null;
  guideSeen.value = true;
  try {
    localStorage.setItem(kept, 'seen');
  } catch {
    // A browser that keeps nothing offers it again next time.
  }
}

/** The flight that the guide speaks of: the first that comes with the page. */
const sample = computed(() => flights.value.find((f) => f.origin === 'sample'));

export function canGuide(): boolean {
  return sample.value !== undefined;
}

/** True while the flight that it speaks of is the one that is shown. */
export const guidedShown = computed(
  () => sample.value !== undefined && current.value?.source.id === sample.value.id,
);

/** Opens the sample flight and begins. */
export async function startGuide(): Promise<void> {
  const flight = sample.peek();
  if (flight === undefined) return;
  guideStop.value = 0;
  if (current.peek()?.source.id === flight.id) location.hash = `#/review?flight=${flight.id}`;
  else await openFlight(flight);
}

/** The next stop, or the end. */
export function moveGuide(step: 1 | -1): void {
  const next = (guideStop.peek() ?? 0) + step;
  if (next >= guideSteps.length) dismissGuide();
  else guideStop.value = Math.max(0, next);
}

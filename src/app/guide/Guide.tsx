import { useLayoutEffect, useRef } from 'preact/hooks';
import { route } from '../route.ts';
import { current } from '../state.ts';
import { canGuide, dismissGuide, guidedShown, guideSeen, guideStop, moveGuide, startGuide } from './guide.ts';
import { guideSteps } from './guideSteps.ts';
import { mark } from './mark.ts';

/** The guide's present stop, at the foot of the window, with what it points at marked. */
export function Guide() {
  const stop = guideStop.value;
  const step = stop === null ? undefined : guideSteps[stop];
  const open = current.value;
  const next = useRef<HTMLButtonElement>(null);
  const here = step !== undefined && route.value.screen === 'review' && guidedShown.value;

  useLayoutEffect(() => {
    if (!here) return;
    // After the frame has led the reader to the head of a new review.
    const later = requestAnimationFrame(() => next.current?.focus({ preventScroll: true }));
    return () => cancelAnimationFrame(later);
  }, [here, stop]);

  // Before the stop is painted, so that what it says and what it points at change in one frame. Where only the review
  // has changed, the reader stays where they are.
  const led = useRef<typeof step>(undefined);
  useLayoutEffect(() => {
    if (!here) {
      led.current = undefined;
      return;
    }
    const block = stop === 0 ? 'center' : 'start';
    const unmark = mark(step.at, led.current === step ? null : block);
    led.current = step;
    return unmark;
  }, [here, stop, step, open?.analysis]);

  if (!here || stop === null) return null;
  const last = stop === guideSteps.length - 1;
  return (
    <aside
      class="guide"
      aria-label="Guided first review"
      onKeyDown={(event) => {
        if (event.key === 'Escape') dismissGuide();
      }}
    >
      <div aria-live="polite">
        <h2>
          {step.title}{' '}
          <span class="quiet">
            {stop + 1} of {guideSteps.length}
          </span>
        </h2>
        <p>{step.text}</p>
      </div>
      <div class="guide-buttons">
        <button type="button" class="button" ref={next} onClick={() => moveGuide(1)}>
          {last ? 'Done' : 'Next'}
        </button>
        <button type="button" class="plain" disabled={stop === 0} onClick={() => moveGuide(-1)}>
          Back
        </button>
        {last ? null : (
          <button type="button" class="plain" onClick={dismissGuide}>
            Leave the guide
          </button>
        )}
      </div>
    </aside>
  );
}

/** Offers the guide to those who have not seen it. */
export function GuideOffer() {
  if (guideSeen.value || !canGuide()) return null;
  return (
    <p class="guide-offer">
      New here?
      <button type="button" class="plain strong" onClick={() => void startGuide()}>
        Read a first review with a guide
      </button>
      <button type="button" class="plain" onClick={dismissGuide}>
        No, thank you
      </button>
    </p>
  );
}

/** The way back to the guide, at the page's foot. */
export function GuideAgain() {
  if (!canGuide()) return null;
  return (
    <button type="button" class="plain" onClick={() => void startGuide()}>
      Guided first review
    </button>
  );
}

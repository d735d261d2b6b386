import { ascentSpan, wholeSpan } from '../../exchange/report/flightSpan.ts';
import type { Analysis } from '../../review/types.ts';
import { showAscent, showSpan, span, zoom } from './timeFrame.ts';

/** The stretch of time that all charts show, without dragging. */
export function ZoomButtons({ analysis }: { readonly analysis: Analysis }) {
  const whole = wholeSpan(analysis);
  const ascent = ascentSpan(analysis);
  const { start_s, end_s } = span.value;
  const same = (a: number, b: number) => Math.abs(a - b) < 0.2;
  const showsAscent = same(start_s, ascent.start_s) && same(end_s, ascent.end_s);
  const showsWhole = same(start_s, whole.start_s) && same(end_s, whole.end_s);
  const differ = !(same(ascent.start_s, whole.start_s) && same(ascent.end_s, whole.end_s));
  return (
    <fieldset class="zoom">
      <legend class="unseen">Stretch of time in all charts</legend>
      {differ ? (
        <button type="button" class="plain" aria-pressed={showsAscent} onClick={showAscent}>
          Ascent
        </button>
      ) : null}
      <button type="button" class="plain" aria-pressed={showsWhole} onClick={() => showSpan(whole)}>
        Whole log
      </button>
      <button type="button" class="plain sign" aria-label="Show a shorter stretch" onClick={() => zoom(0.5)}>
        +
      </button>
      <button
        type="button"
        class="plain sign"
        aria-label="Show a longer stretch"
        disabled={showsWhole}
        onClick={() => zoom(2)}
      >
        −
      </button>
    </fieldset>
  );
}

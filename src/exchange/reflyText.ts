import type { Refly } from '../review/reflyRequest.ts';
import { formatFigure } from '../units/figures.ts';
import { againstPlanText } from './againstPlanText.ts';
import { headingText } from './headingText.ts';
import { type Inks, inks } from './inks.ts';
import { plainDocument } from './plainDocument.ts';
import type { TextOptions } from './reviewText.ts';
import { wrapText } from './wrapText.ts';

/** A flight flown again, as text of `width` columns: the model's error, the plan, the best ascent. */
export function reflyText(document: Refly, { width, colour }: TextOptions): string {
  const refly = plainDocument(document);
  const ink = inks(colour);
  const lines = [
    ...wrapText(
      [refly.file, refly.card ?? 'no mission card', refly.vehicle].filter(Boolean).join(' · '),
      width,
    ),
    '',
    headingText('Flown again', 'by the log’s own controls', ink, width),
    ...asFlown(refly, width),
  ];
  if (refly.againstPlan !== null) {
    lines.push('', headingText('Against the plan', 'flown − planned', ink, width));
    lines.push(...againstPlanText(refly.againstPlan, ink, width));
  }
  if (refly.best !== null) {
    lines.push('', headingText('Best ascent', 'same rocket, target and limits', ink, width));
    lines.push(...best(refly, ink, width));
  }
  return `${lines.join('\n')}\n`;
}

function asFlown({ asFlown: flown }: Refly, width: number): string[] {
  if ('reason' in flown) return wrapText(`It cannot be flown again: ${flown.reason}.`, width);
  return [
    ...wrapText(
      `At the last cutoff, ${formatFigure(flown.time_s, { decimals: 1 })} s, the model is off the log by ${signed(flown.speedError_m_s, 2)} m/s and ${signed(flown.altitudeError_m, 0)} m.`,
      width,
    ),
    ...flown.assumed.flatMap((text) => wrapText(`· ${text}`, width, '  ')),
  ];
}

function best({ best: found, flownMargin_m_s }: Refly, ink: Inks, width: number): string[] {
  if (found === null) return [];
  if ('reason' in found) return wrapText(`None was found: ${found.reason}.`, width);
  const whole = (value: number) => formatFigure(value, { decimals: 0 });
  const verdict = found.reachesTarget
    ? `The same rocket can arrive with ${whole(found.margin_m_s)} m/s to spare${found.relit ? ', with a second burn of its last stage' : ''}.`
    : `No ascent was found that reaches the target: ${whole(-found.margin_m_s)} m/s are missing even flown best.`;
  const gain_m_s = flownMargin_m_s === null ? null : found.margin_m_s - flownMargin_m_s;
  if (flownMargin_m_s !== null && gain_m_s !== null && gain_m_s < -0.5) {
    // A search that ends below what was flown has not found the best, and must not say so.
    return wrapText(
      `The search found nothing better than this flight: it ended with a margin of ${whole(flownMargin_m_s)} m/s, and the best of the ${whole(found.trials)} flights tried with ${whole(found.margin_m_s)} m/s.`,
      width,
    ).map(ink.strong);
  }
  const gain =
    flownMargin_m_s === null || gain_m_s === null
      ? []
      : wrapText(
          `This flight ended with a margin of ${whole(flownMargin_m_s)} m/s: ${whole(gain_m_s)} m/s were to be had by flying alone.`,
          width,
        );
  return [
    ...wrapText(verdict, width).map(ink.strong),
    ...gain,
    ...wrapText(
      `Insertion at ${whole(found.insertion_s)} s; most dynamic pressure ${formatFigure(found.maxDynamicPressure_Pa / 1000, { decimals: 1 })} kPa, most acceleration ${formatFigure(found.maxAcceleration_m_s2, { decimals: 1 })} m/s²; ${whole(found.trials)} flights tried.`,
      width,
    ),
    ...found.assumed.flatMap((text) => wrapText(`· ${text}`, width, '  ')),
  ];
}

function signed(value: number, decimals: number): string {
  return formatFigure(value, { decimals, signed: true });
}

import type { ReviewWaste } from '../../review/types.ts';
import type { Drawing } from './drawing.ts';
import type { HeroCurve } from './heroCurve.ts';
import type { Overlay } from './overlay.ts';

function times(values: ArrayLike<number | null>, scale: number): (number | null)[] {
  return Array.from(values, (v) => (v === null ? null : v * scale));
}

/** A curve in m/s with every value × scale. */
export function curveTimes(curve: HeroCurve, scale: number): HeroCurve {
  if (scale === 1) return curve;
  const { told, band } = curve;
  return {
    ...curve,
    values: times(curve.values, scale),
    told: told && { low: told.low * scale, high: told.high * scale },
    band: band && { low: times(band.low, scale), high: times(band.high, scale) },
  };
}

/** Another flight's margin × scale. */
export function overlayTimes(overlay: Overlay, scale: number): Overlay {
  const { margin } = overlay;
  if (scale === 1 || margin === null) return overlay;
  return { ...overlay, margin: { ...margin, values: times(margin.values, scale) } };
}

/** Rates and totals of waste × scale. */
export function wasteTimes(waste: ReviewWaste, scale: number): ReviewWaste {
  if (scale === 1) return waste;
  const rates = Object.fromEntries(
    Object.entries(waste.rates).map(([cause, values]) => [cause, values.map((v) => v * scale)]),
  ) as unknown as ReviewWaste['rates'];
  const totals = Object.fromEntries(
    Object.entries(waste.totals).map(([cause, total]) => {
      const { value, low, high } = total.deltaV_m_s;
      const [v, l, h] = times([value, low, high], scale);
      return [cause, { ...total, deltaV_m_s: { ...total.deltaV_m_s, value: v, low: l, high: h } }];
    }),
  ) as unknown as ReviewWaste['totals'];
  return { ...waste, rates, totals };
}

/** A picture whose figures were scaled, with the unit's name in place of m/s in all its texts. */
export function inUnit(drawing: Drawing | null, unit: string): Drawing | null {
  if (drawing === null || unit === 'm/s') return drawing;
  const renamed = (text: string) => text.replaceAll('m/s', unit);
  const { attributes } = drawing;
  const label = attributes['aria-label'];
  return {
    ...drawing,
    attributes: typeof label === 'string' ? { ...attributes, 'aria-label': renamed(label) } : attributes,
    children: drawing.children.map((c) => (typeof c === 'string' ? renamed(c) : (inUnit(c, unit) ?? c))),
  };
}

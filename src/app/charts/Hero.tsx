import { useMemo, useRef } from 'preact/hooks';
import { columnsCsv } from '../../exchange/columnsCsv.ts';
import { keyRow, stacked } from '../../exchange/report/drawing.ts';
import { bandText, halfAt, heroCurve } from '../../exchange/report/heroCurve.ts';
import { curveTimes, inUnit, overlayTimes, wasteTimes } from '../../exchange/report/inUnit.ts';
import { marginChart } from '../../exchange/report/marginChart.ts';
import { plotFrame } from '../../exchange/report/plotFrame.ts';
import { ratesAt, ribbonChart, shownCauses } from '../../exchange/report/ribbonChart.ts';
import { timeBar } from '../../exchange/report/timeBar.ts';
import { valueAt } from '../../exchange/sampleAt.ts';
import { sentence } from '../../exchange/sentence.ts';
import type { Analysis, ReviewWaste } from '../../review/types.ts';
import { readingText, timeText } from '../figureText.ts';
import { Term, TermsButton } from '../parts/Term.tsx';
import { shownIn, speedIn } from '../units.ts';
import { overlays } from './overlays.ts';
import { Picture } from './Picture.tsx';
import { SaveChart } from './SaveChart.tsx';
import { savedWidth_px } from './savePicture.ts';
import { TableTwin } from './TableTwin.tsx';
import { TimePointer } from './TimePointer.tsx';
import { cursor_s, framed, span as shownSpan } from './timeFrame.ts';
import { useWidth } from './useWidth.ts';
import { ZoomButtons } from './ZoomButtons.tsx';

function heroHeight(width: number, narrow: boolean): number {
  return narrow ? 250 : Math.round(Math.min(380, 268 + Math.max(0, width - 1120) * 0.14));
}

function readingIn(name: string, value: number, unit: string, scale: number, half: number | null): string {
  const shown = shownIn(unit, scale);
  const interval = half === null || half < 0.05 ? '' : ` ±${readingText(half * shown.scale)}`;
  return `${name} ${readingText(value * shown.scale)}${interval} ${shown.unit}`;
}

/** Causes of the margin's slope with what each takes at the cursor, else in all. */
function RibbonKey({ waste }: { readonly waste: ReviewWaste }) {
  const at = cursor_s.value;
  const speed = speedIn();
  const rates = at === null ? null : ratesAt(waste, at);
  return (
    <ul class="ribbon-key">
      {shownCauses(waste).map(({ key, label, colour }) => {
        const total = waste.totals[key].deltaV_m_s.value;
        return (
          <li key={key}>
            <span class={`swatch ${colour.replace(/^var\(--(.*)\)$/u, '$1')}`} />
            <Term label={label} />{' '}
            <b>
              {rates !== null
                ? readingText(rates[key] * speed.scale)
                : total === null
                  ? ''
                  : readingText(total * speed.scale)}
            </b>
          </li>
        );
      })}
      <li class="quiet">
        {rates === null ? `${speed.unit} in all` : `${speed.unit} each second, at the cursor`}
      </li>
    </ul>
  );
}

/** Margin (or delta-v to go), time, phases, events and the causes of the slope, with the cursor of all charts. */
export function Hero({ analysis }: { readonly analysis: Analysis }) {
  const { review, strips } = analysis;
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const frame = plotFrame(width);
  const span = shownSpan.value;
  const curve = useMemo(() => heroCurve(review), [review]);
  const { curves, band, lostAt_s } = review.budget;
  const edges = curve?.kind === 'margin' ? band?.margin : band?.toGo;
  const edgeOf = curve?.kind === 'margin' ? 'margin' : 'to go';
  const { waste } = review;

  const describe = (time_s: number): string => {
    const half = curve === null ? null : halfAt(curve, time_s);
    const readings = [
      ...(curve?.kind === 'margin'
        ? [['margin', valueAt(curves.time_s, curves.margin, time_s), 'm/s', 1, half]]
        : []),
      ['to go', valueAt(curves.time_s, curves.toGo, time_s), 'm/s', 1, curve?.kind === 'to-go' ? half : null],
      ['altitude', valueAt(strips.time_s, strips.channels.altitude_m?.values ?? [], time_s), 'km', 1e-3],
      ...overlays.value.flatMap(({ name, margin }) =>
        margin === null ? [] : [[name, valueAt(margin.time_s, margin.values, time_s), 'm/s', 1]],
      ),
    ] as [string, number | null, string, number, (number | null)?][];
    const known = readings.flatMap(([name, value, unit, scale, half]) =>
      value === null ? [] : [readingIn(name, value, unit, scale, half ?? null)],
    );
    return `${timeText(time_s)}: ${known.length ? known.join(', ') : 'nothing known'}`;
  };

  const at = cursor_s.value;
  const title = curve?.title ?? 'Time';
  const speed = speedIn();
  // What is saved stays SI: scale 1.
  const chartFor = (wide: number, scale = 1) => {
    const shape = plotFrame(wide);
    return curve === null
      ? null
      : marginChart({
          id: `margin-${wide}`,
          curve: curveTimes(curve, scale),
          lostAt_s,
          span,
          frame: shape,
          height: heroHeight(wide, shape.narrow),
          overlays: overlays.value.map((o) => overlayTimes(o, scale)),
          framed: framed.value,
        });
  };
  const timeBarFor = (wide: number) => timeBar(review, span, plotFrame(wide));
  const ribbonFor = (wide: number, scale = 1) =>
    waste === null
      ? null
      : ribbonChart({
          waste: wasteTimes(waste, scale),
          span,
          frame: plotFrame(wide),
          height: 78,
          lostAt_s,
          framed: framed.value,
        });
  const told = curve === null ? null : bandText(curveTimes(curve, speed.scale));
  const chart = width === 0 ? null : inUnit(chartFor(width, speed.scale), speed.unit);
  const ribbon = width === 0 ? null : inUnit(ribbonFor(width, speed.scale), speed.unit);

  return (
    <section class="hero" aria-label={title}>
      <div class="head-line">
        <h2>
          <Term label={title} />{' '}
          <span class="quiet">
            {at === null ? (curve?.note.replace('m/s', speed.unit) ?? 's from lift-off') : describe(at)}
          </span>
        </h2>
        <TermsButton
          of={title}
          labels={[
            title,
            'delta-v to go',
            'projected total',
            'off direction',
            'off time',
            'drift',
            'back pressure',
            'drag',
          ]}
        />
        <ZoomButtons analysis={analysis} />
      </div>
      {curve === null ? (
        <p class="absent">
          Neither margin nor delta-v to go is available:{' '}
          {review.budget.deltaVToGo.reason ??
            review.budget.margin.reason ??
            'the log does not show the orbit'}
          .
        </p>
      ) : null}
      {curve?.instead ? <p class="instead">{curve.instead}</p> : null}
      <div class="plot" ref={box}>
        {chart === null ? null : <Picture drawing={chart} />}
        {width === 0 ? null : <Picture drawing={timeBarFor(width)} />}
        {ribbon === null || waste === null ? null : (
          <>
            <h3 class="ribbon-title">
              …lost to <span class="quiet">{speed.unit} each second</span>
            </h3>
            <Picture drawing={ribbon} />
          </>
        )}
        {width === 0 ? null : <TimePointer span={span} frame={frame} describe={describe} />}
      </div>
      {waste === null ? null : <RibbonKey waste={waste} />}
      {told === null ? null : <p class="band-note quiet">{sentence(told.replaceAll('m/s', speed.unit))}</p>}
      {curve === null ? null : (
        <div class="chart-foot">
          <TableTwin
            name={`${curve.title} as a table`}
            time_s={curves.time_s}
            columns={[
              { label: 'spent', unit: 'm/s', values: curves.spent, scale: 1 },
              { label: 'to go', unit: 'm/s', values: curves.toGo, scale: 1 },
              { label: 'projected total', unit: 'm/s', values: curves.projectedTotal, scale: 1 },
              { label: 'margin', unit: 'm/s', values: curves.margin, scale: 1 },
              { label: `${edgeOf} at least`, unit: 'm/s', values: edges?.low ?? [], scale: 1 },
              { label: `${edgeOf} at most`, unit: 'm/s', values: edges?.high ?? [], scale: 1 },
            ]}
          />
          <SaveChart
            name={title}
            review={review}
            picture={() => {
              const drawing = chartFor(savedWidth_px);
              return (
                drawing && { drawing: stacked([drawing, timeBarFor(savedWidth_px)]), title, note: curve.note }
              );
            }}
            csv={() =>
              columnsCsv([
                { name: 'time_s', values: curves.time_s },
                { name: 'spent_m_s', values: curves.spent },
                { name: 'toGo_m_s', values: curves.toGo },
                { name: 'projectedTotal_m_s', values: curves.projectedTotal },
                { name: 'margin_m_s', values: curves.margin },
                ...(['margin', 'toGo'] as const).flatMap((of) => [
                  { name: `${of}Low_m_s`, values: band?.[of].low ?? [] },
                  { name: `${of}High_m_s`, values: band?.[of].high ?? [] },
                ]),
              ])
            }
          />
          {waste === null ? null : (
            <>
              <TableTwin
                name="Causes as a table"
                time_s={waste.curves.time_s}
                columns={shownCauses(waste).map(({ key, label }) => ({
                  label,
                  unit: 'm/s each second',
                  values: waste.rates[key],
                  scale: 1,
                }))}
              />
              <SaveChart
                name="Causes"
                review={review}
                picture={() => {
                  const drawing = ribbonFor(savedWidth_px);
                  const key = shownCauses(waste).map((c) => ({ ...c, look: 'area' as const }));
                  const { left } = plotFrame(savedWidth_px);
                  return (
                    drawing && {
                      drawing: stacked([
                        drawing,
                        timeBarFor(savedWidth_px),
                        keyRow(savedWidth_px, left, key),
                      ]),
                      title: 'Margin lost to',
                      note: 'm/s each second',
                    }
                  );
                }}
                csv={() =>
                  columnsCsv([
                    { name: 'time_s', values: waste.curves.time_s },
                    ...shownCauses(waste).map(({ key }) => ({
                      name: `${key}_m_s2`,
                      values: waste.rates[key],
                    })),
                  ])
                }
              />
            </>
          )}
        </div>
      )}
    </section>
  );
}

import { useMemo, useState } from 'preact/hooks';
import { assumptionTexts, intervalText, numberText, valueText } from '../../exchange/figureText.ts';
import { lineChart } from '../../exchange/report/lineChart.ts';
import { plotFrame } from '../../exchange/report/plotFrame.ts';
import type { Analysis, Figure } from '../../review/types.ts';
import { formatFigure } from '../../units/figures.ts';
import { Picture } from '../charts/Picture.tsx';
import { ColumnTable } from '../parts/ColumnTable.tsx';
import { notice } from '../state.ts';
import { inUnits, speedIn } from '../units.ts';
import { adoptVehicle } from './adoptVehicle.ts';
import { cardText } from './cardDraft.ts';
import { broken, card, setText } from './cardState.ts';

interface Line {
  readonly label: string;
  readonly unit: string;
  readonly figure: Figure;
  readonly scale: number;
  readonly decimals: number;
  readonly card: number | null;
}

function linesOf({ review }: Analysis): readonly Line[] {
  const { vehicle } = review;
  if (vehicle === null) return [];
  const stages = vehicle.stages.flatMap((s): Line[] => {
    const name = s.stretch === 0 ? s.name : `${s.name}, stretch ${s.stretch + 1}`;
    return [
      { label: `${name}: Isp`, unit: 's', figure: s.isp_s, scale: 1, decimals: 1, card: s.card.isp_s },
      {
        label: `${name}: thrust`,
        unit: 'kN',
        figure: s.thrustVacuum_N,
        scale: 1e-3,
        decimals: 1,
        card: s.card.thrustVacuum_N,
      },
      {
        label: `${name}: exit area`,
        unit: 'm²',
        figure: s.exitArea_m2,
        scale: 1,
        decimals: 2,
        card: s.card.exitArea_m2,
      },
    ];
  });
  const drag = (vehicle.dragArea ?? []).map(
    (d): Line => ({
      label: `drag area at Mach ${formatFigure(d.mach)}`,
      unit: 'm²',
      figure: d.dragArea_m2,
      scale: 1,
      decimals: 2,
      card: d.card_m2,
    }),
  );
  return [...stages, ...drag];
}

/** Logged speed less what the equation of motion gives with the identified vehicle: noise about zero where it fits. */
function Residual({ analysis }: { readonly analysis: Analysis }) {
  const { review, strips } = analysis;
  const strip = strips.channels.equationResidual_m_s;
  const { unit, scale } = speedIn();
  const drawing = useMemo(() => {
    if (strip === undefined || !strip.values.some(Number.isFinite)) return null;
    return lineChart({
      id: 'residual',
      strip: {
        title: 'Residual',
        unit,
        scale,
        fromZero: false,
        named: false,
        lines: [
          {
            name: 'equationResidual_m_s',
            label: 'residual',
            colour: '--ink',
            dashed: false,
            guest: false,
            strip,
          },
        ],
      },
      time_s: strips.time_s,
      phases: review.phases,
      lostAt_s: null,
      overlays: [],
      span: { start_s: review.ledger.start_s, end_s: review.ledger.end_s },
      frame: plotFrame(560),
      log: false,
      axis: true,
      framed: null,
      titled: false,
    });
  }, [strip, strips, review, unit, scale]);
  if (drawing === null) return null;
  const rms = numberText((review.vehicle?.residual_m_s ?? Number.NaN) * scale, 2);
  return (
    <figure class="residual">
      <figcaption>
        Residual{' '}
        <span class="quiet">
          {unit}, logged speed less that of the equation of motion; {rms} {unit} root mean square
        </span>
      </figcaption>
      <Picture drawing={drawing} />
    </figure>
  );
}

/** What a line is, and under it what an assumption could move its figure by. */
function labelled(l: Line) {
  const moves = assumptionTexts(l.figure, l);
  return (
    <>
      {l.label}
      {moves.map((text) => (
        <div key={text} class="assumption">
          {text} {l.unit}
        </div>
      ))}
    </>
  );
}

/** The vehicle as the log shows it, beside what the card says. */
export function VehiclePanel({ analysis }: { readonly analysis: Analysis }) {
  const { vehicle } = analysis.review;
  const [more, setMore] = useState(false);
  if (vehicle === null) {
    return (
      <section aria-label="Vehicle from the log">
        <h2>Vehicle from the log</h2>
        <p class="absent">
          Not identified: that takes altitude, speed, mass and throttle or thrust, in at least one burn.
        </p>
      </section>
    );
  }
  const lines = linesOf(analysis);
  const known = lines.filter((l) => l.figure.value !== null);
  const adopt = () => {
    setText(cardText(adoptVehicle(card.peek(), vehicle)));
    notice.value =
      'The values that the log fixes stand in the card. Review the flight with it to see the difference.';
  };
  return (
    <section aria-label="Vehicle from the log">
      <h2>
        Vehicle from the log{' '}
        <span class="quiet">
          {vehicle.inBooks === 'card' ? 'the card’s values stand in the ledger' : 'stands in the ledger'}
        </span>
      </h2>
      <p class="detail">{inUnits(vehicle.text)}</p>
      <div class={more ? 'tables with-more' : 'tables'}>
        <button type="button" class="plain more-switch" aria-pressed={more} onClick={() => setMore(!more)}>
          Intervals and basis
        </button>
        <ColumnTable
          look="vehicle"
          rows={known}
          keyOf={(l) => l.label}
          columns={[
            { head: 'value', cell: labelled },
            {
              head: 'card',
              kind: 'number',
              cellLook: 'quiet',
              cell: (l) => numberText(l.card === null ? null : l.card * l.scale, l.decimals),
            },
            { head: 'log', kind: 'number', cell: (l) => valueText(l.figure, l) },
            {
              head: '95 %',
              kind: 'number',
              look: 'more',
              cellLook: 'quiet',
              cell: (l) => intervalText(l.figure, l),
            },
            { head: 'unit', cellLook: 'quiet', cell: (l) => l.unit },
            { head: 'basis', look: 'basis more', cellLook: 'quiet', cell: (l) => l.figure.basis },
          ]}
        />
      </div>
      {known.some((l) => l.figure.basis === 'identified') ? (
        <button type="button" class="button lesser" disabled={broken.value} onClick={adopt}>
          Take identified values into the card
        </button>
      ) : null}
      {vehicle.unseparated.length === 0 ? null : (
        <ul class="plain-list">
          {vehicle.unseparated.map((t) => (
            <li key={t}>{inUnits(t)}</li>
          ))}
        </ul>
      )}
      <Residual analysis={analysis} />
    </section>
  );
}

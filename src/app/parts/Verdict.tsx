import { Fragment } from 'preact';
import { numberText } from '../../exchange/figureText.ts';
import { unbroken } from '../../exchange/sentence.ts';
import type { Analysis, Review } from '../../review/types.ts';
import { formatFigure } from '../../units/figures.ts';
import { inUnits } from '../units.ts';
import { ReviewActions } from './ReviewActions.tsx';

/** `160 × 160 km`-like words of the mission card, and the log's rate, in one line. */
function contextParts(review: Review): readonly string[] {
  const { mission, source, channels } = review;
  const vehicle = [
    mission.vehicle,
    mission.payload_kg === null ? null : payloadText(mission.payload_kg),
  ].filter((part) => part !== null);
  const flown = [
    mission.pilot,
    mission.attempt === null ? null : `attempt ${mission.attempt}`,
    mission.date,
  ].filter((part) => part !== null);
  return [
    mission.name ?? source.file,
    `${mission.world}, ${inUnits(mission.target)}`,
    vehicle.join(', '),
    flown.join(', '),
    `${channels.length} channels, ${formatFigure(source.rate_Hz, { digits: 3 })} Hz`,
  ].filter((part) => part !== '');
}

function payloadText(payload_kg: number): string {
  return payload_kg < 1000
    ? `${numberText(payload_kg, 0)} kg aboard`
    : `${numberText(payload_kg / 1000, 1)} t aboard`;
}

/** What is set apart, first what was missed: `361 m/s short`, `12 km too high`, `9 m/s left aboard`, an altitude. */
const tellingFigures: readonly RegExp[] = [
  /\d[\d,.]*\s(?:km|m|ft) too (?:high|low)/,
  /−?\d[\d,.]*\s(?:m\/s|ft\/s|kn)(?:\s(?:short|to go at cutoff|early|left aboard))?/,
  /−?\d[\d,.]*(?:\s×\s−?\d[\d,.]*)?\s(?:km|m|ft)(?![\w²³/])/,
];

/** The sentence in three: before its telling figure, the figure, after it. */
function split(text: string): readonly [string, string, string] {
  const found = tellingFigures.map((f) => f.exec(text)).find((m) => m !== null) ?? null;
  if (found === null) return [text, '', ''];
  return [text.slice(0, found.index), found[0], text.slice(found.index + found[0].length)];
}

const reached: ReadonlySet<Review['verdict']['code']> = new Set([
  'in-orbit',
  'suborbital-as-planned',
  'escape',
  'started-in-orbit',
]);

/** Reached, missed, or neither where it cannot be told. */
function figureClass(code: Review['verdict']['code']): string {
  if (code === 'undetermined') return '';
  return reached.has(code) ? 'reached' : 'short';
}

/** The largest thing on the page: one sentence with its figure. */
export function Verdict({ analysis }: { readonly analysis: Analysis }) {
  const { review } = analysis;
  const [before, figure, after] = split(unbroken(inUnits(review.verdict.text)));
  return (
    <div class="verdict">
      <p class="context">
        {contextParts(review).map((part, i, { length }) => (
          <Fragment key={part}>
            <span>{i === length - 1 ? part : `${part} ·`}</span>{' '}
          </Fragment>
        ))}
      </p>
      <h1 tabIndex={-1}>
        {before}
        {figure === '' ? null : <span class={figureClass(review.verdict.code)}>{figure}</span>}
        {after}
      </h1>
      {review.verdict.detail === '' ? null : <p class="detail">{unbroken(inUnits(review.verdict.detail))}</p>}
      <ReviewActions analysis={analysis} />
    </div>
  );
}

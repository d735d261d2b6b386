import { numberText } from '../../exchange/figureText.ts';
import { timeOrigin } from '../../exchange/readingText.ts';
import { unavailableTexts } from '../../exchange/unavailableText.ts';
import { CAUTIONS } from '../../review/cautions.ts';
import type { Review } from '../../review/types.ts';
import { formatFigure } from '../../units/figures.ts';
import { inUnits } from '../units.ts';

/** What could not be had and why, how the rest was come by, how the log was understood. */
export function Provenance({ review }: { readonly review: Review }) {
  const missing = [
    ...review.derivation.filter((d) => d.basis === 'unavailable').map((d) => `${d.quantity}: ${d.how}`),
    ...unavailableTexts(review),
  ];
  const had = review.derivation.filter((d) => d.basis !== 'unavailable');
  // What holds for every flight stands once, at the page's foot.
  const cautions = review.cautions.filter((c) => !CAUTIONS.includes(c));
  const { source, mission } = review;
  return (
    <section class="provenance" aria-label="How the figures were come by">
      {missing.length === 0 ? null : (
        <div>
          <h2>What could not be derived, and why</h2>
          <ul>
            {missing.map((text) => (
              <li key={text}>{inUnits(text)}</li>
            ))}
          </ul>
        </div>
      )}
      {mission.assumed.length === 0 ? null : (
        <div>
          <h2>Assumed</h2>
          <ul>
            {mission.assumed.map((a) => (
              <li key={a}>{inUnits(a)}</li>
            ))}
          </ul>
        </div>
      )}
      {review.quality.length === 0 ? null : (
        <div>
          <h2>About the log</h2>
          <ul>
            {review.quality.map((q) => (
              <li key={`${q.code} ${q.channel ?? ''} ${q.text}`}>{inUnits(q.text)}</li>
            ))}
          </ul>
        </div>
      )}
      {cautions.length === 0 ? null : (
        <div>
          <h2>Cautions</h2>
          <ul>
            {cautions.map((c) => (
              <li key={c}>{c}</li>
            ))}
          </ul>
        </div>
      )}
      {had.length === 0 ? null : (
        <details>
          <summary>How each quantity was come by</summary>
          <dl>
            {had.map((d) => (
              <div key={d.quantity}>
                <dt>
                  {d.quantity} <span class="quiet">{d.basis}</span>
                </dt>
                <dd>{inUnits(d.how)}</dd>
              </div>
            ))}
          </dl>
        </details>
      )}
      <details>
        <summary>How the log was understood</summary>
        <p class="quiet">
          {source.file}: {numberText(source.rows, 0)} rows, {formatFigure(source.rate_Hz, { digits: 3 })} Hz,
          {timeOrigin(review)} at {numberText(source.liftOffLogTime_s, 1)} s of the log
          {source.card === null ? ', no mission card' : `, mission card ${source.card}`}.
        </p>
        <table class="figures channels">
          <thead>
            <tr>
              <th scope="col">channel</th>
              <th scope="col">column</th>
              <th scope="col">unit</th>
              <th scope="col" class="more">
                why
              </th>
            </tr>
          </thead>
          <tbody>
            {review.channels.map((c) => (
              <tr key={`${c.channel} ${c.columnIndex}`}>
                <th scope="row">{c.channel}</th>
                <td translate={false}>{c.column}</td>
                <td translate={false}>{c.unit === '1' ? 'fraction' : c.unit}</td>
                <td class="more quiet">{inUnits(c.reason)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}

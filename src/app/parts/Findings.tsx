import { shown, valueText } from '../../exchange/figureText.ts';
import type { Finding, Review } from '../../review/types.ts';
import { showSpan } from '../charts/timeFrame.ts';
import { timeText } from '../figureText.ts';

function FindingItem({ finding }: { readonly finding: Finding }) {
  const length = finding.end_s - finding.start_s;
  const frame = () =>
    showSpan({ start_s: finding.start_s - 0.15 * length, end_s: finding.end_s + 0.15 * length });
  return (
    <li>
      <div class="finding-head">
        <button type="button" class="finding-title" onClick={frame}>
          {finding.text}
          <span class="unseen"> (show this stretch in all charts)</span>
        </button>
        <span class="quiet">
          {timeText(finding.start_s)} to {timeText(finding.end_s)}
        </span>
        {finding.cost_m_s.value === null ? null : (
          <span class="finding-cost">{valueText(finding.cost_m_s, shown(finding.cost_m_s))} m/s</span>
        )}
      </div>
      <p>
        {finding.evidence} {finding.advice}
      </p>
    </li>
  );
}

/** What cost most, ranked. Not there while nothing was found. */
export function Findings({ review }: { readonly review: Review }) {
  if (review.findings.length === 0) return null;
  return (
    <section class="findings" aria-label="Findings">
      <h2>What cost most</h2>
      <ol>
        {review.findings.map((f) => (
          <FindingItem key={`${f.code} ${f.start_s}`} finding={f} />
        ))}
      </ol>
    </section>
  );
}

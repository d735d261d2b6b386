import { useRef, useState } from 'preact/hooks';
import { shown as decimalsOf, intervalText, numberText, valueText } from '../../exchange/figureText.ts';
import { type LedgerPart, ledgerParts } from '../../exchange/report/ledgerParts.ts';
import type { FrameName, LedgerEntries } from '../../review/types.ts';
import { readingText } from '../figureText.ts';
import { speedIn } from '../units.ts';
import { useWidth } from './useWidth.ts';

/** Room that a label inside a segment takes, px, at the bar's 13 px bold. */
function labelWidth(part: LedgerPart): number {
  return 30 + 7.6 * `${part.cause.label} ${readingText(part.value_m_s * speedIn().scale)}`.length;
}

function shareText(share: number): string {
  return `${numberText(100 * share, 1)} %`;
}

function partSentence(part: LedgerPart): string {
  const speed = speedIn();
  const form = decimalsOf(part.figure, speed.scale);
  const interval = intervalText(part.figure, form);
  return [
    `${part.cause.label} ${valueText(part.figure, form)} ${speed.unit}`,
    part.share > 0 ? shareText(part.share) : 'given back',
    interval === '' ? 'no interval' : `95 % interval ${interval}`,
    part.figure.basis,
  ].join(', ');
}

interface Props {
  readonly entries: LedgerEntries;
  readonly frame: FrameName;
  /** Moment to which the books run, in words. */
  readonly until: string;
}

/** The whole delta-v as one bar, split into where it went. The table further down is its twin. */
export function LedgerBar({ entries, frame, until }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const [shown, setShown] = useState<string | null>(null);
  const { taken, given } = ledgerParts(entries);
  const parts = [...taken, ...given];
  const fits = (part: LedgerPart) => part.share * width >= labelWidth(part);
  const detail = parts.find((p) => p.cause.key === shown);

  if (entries.ideal.value === null || taken.length === 0) {
    return (
      <section class="ledger-bar" aria-label="Where the delta-v went">
        <h2>Where the delta-v went</h2>
        <p class="absent">
          Not available: {entries.ideal.reason ?? 'the log does not show what the engines gave'}.
        </p>
      </section>
    );
  }

  const segmentProps = (part: LedgerPart) => ({
    onMouseEnter: () => setShown(part.cause.key),
    onMouseLeave: () => setShown(null),
  });
  const buttonProps = (part: LedgerPart) => ({
    type: 'button' as const,
    'aria-label': partSentence(part),
    onFocus: () => setShown(part.cause.key),
    onBlur: () => setShown(null),
    onClick: () => setShown(part.cause.key),
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Escape') setShown(null);
    },
  });

  return (
    <section class="ledger-bar" aria-label="Where the delta-v went">
      <h2>
        Where {readingText(entries.ideal.value * speedIn().scale)} {speedIn().unit} went{' '}
        <span class="quiet">
          {frame} frame, {until}
        </span>
      </h2>
      <div class="bar" ref={box}>
        {taken.map((part) => (
          <div
            key={part.cause.key}
            class={`segment ${part.cause.swatch}${shown === part.cause.key ? ' chosen' : ''}`}
            style={{ flexGrow: part.share }}
            {...segmentProps(part)}
          >
            {fits(part) ? (
              <button {...buttonProps(part)} class="segment-label">
                {part.cause.label} {readingText(part.value_m_s * speedIn().scale)}
              </button>
            ) : null}
          </div>
        ))}
      </div>
      <div class="bar-under">
        <p class="bar-detail" aria-hidden="true">
          {detail === undefined ? '' : partSentence(detail)}
        </p>
        <ul class="bar-labels">
          {parts
            .filter((part) => !fits(part))
            .map((part) => (
              <li key={part.cause.key} {...segmentProps(part)}>
                <button {...buttonProps(part)} class="bar-label">
                  <span class={`swatch ${part.cause.swatch}`} />
                  {part.cause.label} {readingText(part.value_m_s * speedIn().scale)}
                </button>
              </li>
            ))}
        </ul>
      </div>
    </section>
  );
}

import type { Review } from '../../review/types.ts';
import { tickText, timeText } from '../figureText.ts';
import { eventLabels } from './eventLabels.ts';
import { type PlotFrame, timeTickCount } from './plotFrame.ts';
import { timeTicks } from './ticks.ts';
import type { Span } from './timeFrame.ts';

interface Props {
  readonly review: Review;
  readonly span: Span;
  readonly frame: PlotFrame;
  readonly width: number;
}

const letter = 6.6;

/** The time axis with the phases and events of the flight under it. The events table is its twin. */
export function TimeBar({ review, span, frame, width }: Props) {
  const x = (t: number) =>
    frame.left + ((t - span.start_s) / (span.end_s - span.start_s)) * (frame.right - frame.left);
  const phases = review.phases
    .filter((p) => p.end_s > span.start_s && p.start_s < span.end_s)
    .map((p) => ({ ...p, from: Math.max(x(p.start_s), frame.left), to: Math.min(x(p.end_s), frame.right) }));
  const labels = eventLabels(review.events, x, frame.left, frame.right, letter);
  const shownPhases = phases
    .map((p) => `${p.label} ${timeText(p.start_s)} to ${timeText(p.end_s)}`)
    .join(', ');
  return (
    <svg
      class="time-bar"
      role="img"
      aria-label={`Phases: ${shownPhases === '' ? 'none told apart' : shownPhases}`}
      width={width}
      height={64}
      viewBox={`0 0 ${width} 64`}
    >
      {timeTicks(span.start_s, span.end_s, timeTickCount(frame)).map((t) => (
        <text key={t} class="tick" x={x(t)} y={14} text-anchor="middle">
          {tickText(t)}
        </text>
      ))}
      <text class="tick" x={frame.left - 8} y={14} text-anchor="end">
        {x(0) > frame.left + 12 || span.start_s > 0 ? 's' : ''}
      </text>
      {phases.map((p, i) => (
        <g key={`${p.name} ${p.start_s}`}>
          <rect
            class={i % 2 === 0 ? 'phase' : 'phase other'}
            x={p.from}
            y={22}
            width={Math.max(0, p.to - p.from - 1)}
            height={19}
          />
          {p.to - p.from > letter * p.label.length + 10 ? (
            <text class="phase-label" x={p.from + 6} y={36}>
              {p.label}
            </text>
          ) : null}
        </g>
      ))}
      {labels.map((l) => (
        <g key={`${l.event.name} ${l.event.time_s} ${l.event.subject ?? ''}`}>
          <line class="event-tick" x1={l.x} x2={l.x} y1={41} y2={47} />
          {l.text === '' ? null : (
            <text class="event-label" x={l.x} y={58} text-anchor={l.anchor}>
              {l.text}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}

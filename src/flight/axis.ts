import type { RawBurn } from './burnEdges.ts';
import type { GapDrop } from './massDrops.ts';

/** The flight's time axis: the log's rows and, between them, burn edges and mass drops. */
export interface Axis {
  readonly time: Float64Array;
  /** Row of the log at each point, −1 where the point was inserted. */
  readonly row: Int32Array;
  /** Axis index of each burn's start and end. */
  readonly burnStart: readonly number[];
  readonly burnEnd: readonly number[];
  /** Axis index of the point before each drop; the next point is after it. */
  readonly dropIndex: readonly number[];
  /** Axis index of time zero; −1 where the log begins later. */
  readonly liftOff: number;
}

/** Time between the two points of a drop. */
const DROP_WIDTH_S = 1e-6;
/** An edge this close to a row is taken to be at the row. */
const SNAP_S = 2e-6;

type Mark = { at: number; kind: 'start' | 'end' | 'drop' | 'lift-off'; of: number };

/** Builds the axis. `t` are the log's times, strictly increasing, already from lift-off. */
export function buildAxis(t: Float64Array, burns: readonly RawBurn[], drops: readonly GapDrop[]): Axis {
  const marks: Mark[] = [];
  burns.forEach((burn, of) => {
    marks.push({ at: burn.start_s, kind: 'start', of }, { at: burn.end_s, kind: 'end', of });
  });
  drops.forEach((drop, of) => {
    marks.push({ at: dropTime_s(t, burns, drop), kind: 'drop', of });
  });
  if (t[0]! <= 0) marks.push({ at: 0, kind: 'lift-off', of: 0 });
  marks.sort((a, b) => a.at - b.at);
  const time: number[] = [];
  const row: number[] = [];
  const burnStart = new Array<number>(burns.length).fill(0);
  const burnEnd = new Array<number>(burns.length).fill(0);
  const dropIndex = new Array<number>(drops.length).fill(0);
  let liftOff = -1;
  const place = (mark: Mark, index: number): void => {
    if (mark.kind === 'start') burnStart[mark.of] = index;
    else if (mark.kind === 'end') burnEnd[mark.of] = index;
    else liftOff = index;
  };
  let m = 0;
  for (let i = 0; i < t.length; i++) {
    while (m < marks.length && marks[m]!.at < t[i]! + SNAP_S) {
      const mark = marks[m]!;
      const onRow = Math.abs(mark.at - t[i]!) <= SNAP_S && mark.kind !== 'drop';
      const lastTime = time[time.length - 1] ?? Number.NEGATIVE_INFINITY;
      if (onRow) {
        // Taken at the row itself, which is about to be pushed.
        place(mark, time.length);
      } else if (mark.kind === 'drop') {
        const at = Math.min(Math.max(mark.at, lastTime + DROP_WIDTH_S), t[i]! - 2 * DROP_WIDTH_S);
        dropIndex[mark.of] = time.length;
        time.push(at, at + DROP_WIDTH_S);
        row.push(-1, -1);
      } else {
        const merged = mark.at - lastTime <= SNAP_S;
        const index = merged ? time.length - 1 : time.length;
        place(mark, index);
        if (!merged) {
          time.push(mark.at);
          row.push(-1);
        }
      }
      m++;
    }
    time.push(t[i]!);
    row.push(i);
  }
  return { time: Float64Array.from(time), row: Int32Array.from(row), burnStart, burnEnd, dropIndex, liftOff };
}

/** Middle of the unpowered part of the drop's gap; of the whole gap where it is powered throughout. */
function dropTime_s(t: Float64Array, burns: readonly RawBurn[], drop: GapDrop): number {
  let low = t[drop.gap]!;
  let high = t[drop.gap + 1]!;
  for (const burn of burns) {
    if (burn.end_s > low && burn.end_s < high && burn.start_s <= low) low = burn.end_s;
    if (burn.start_s < high && burn.start_s > low && burn.end_s >= high) high = burn.start_s;
  }
  return (low + high) / 2;
}

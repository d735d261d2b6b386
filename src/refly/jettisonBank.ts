import type { RocketJettison } from './rocket.ts';
import { Watch } from './watch.ts';

/** Parts that are thrown off at a time or a height, each once a flight. */
export class JettisonBank {
  private readonly parts: readonly RocketJettison[];
  private gone: boolean[];
  /** Their heights, one for each part. */
  readonly overHeight: readonly Watch[];

  constructor(parts: readonly RocketJettison[]) {
    this.parts = parts;
    this.gone = parts.map(() => false);
    this.overHeight = parts.map(({ altitude_m }) => {
      const height_m = altitude_m ?? Number.POSITIVE_INFINITY;
      return new Watch((s) => s.altitude_m - height_m, 1);
    });
  }

  /** All parts on again but those that a flight begun in the air (else null) had thrown off before. */
  begin(inAir: { readonly time_s: number; readonly altitude_m: number } | null): void {
    this.gone = this.parts.map(
      ({ time_s, altitude_m }) =>
        inAir !== null &&
        ((time_s !== null && time_s <= inAir.time_s) ||
          (altitude_m !== null && altitude_m <= inAir.altitude_m)),
    );
  }

  /** The first part that is due by `time_s`, now thrown off; null when there is none. */
  due(time_s: number): RocketJettison | null {
    const i = this.parts.findIndex((p, k) => !this.gone[k] && p.time_s !== null && p.time_s <= time_s);
    return i < 0 ? null : this.throwOff(i);
  }

  /** The part whose height was just passed, now thrown off; null where the watch is of something else. */
  passed(watch: Watch): RocketJettison | null {
    const i = this.overHeight.indexOf(watch);
    return i < 0 ? null : this.throwOff(i);
  }

  /** Time from lift-off of the next part, s; infinite when there is none. */
  next_s(): number {
    let next = Number.POSITIVE_INFINITY;
    this.parts.forEach(({ time_s }, i) => {
      if (!this.gone[i] && time_s !== null) next = Math.min(next, time_s);
    });
    return next;
  }

  /** Watches the heights of what is still on. */
  watch(): void {
    this.overHeight.forEach((w, i) => {
      w.active = !this.gone[i];
    });
  }

  private throwOff(index: number): RocketJettison {
    this.gone[index] = true;
    return this.parts[index]!;
  }
}

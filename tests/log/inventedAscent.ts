/** One instant of an invented ascent; SI units, degrees. */
export interface Instant {
  readonly time_s: number;
  readonly altitude_m: number;
  readonly speed_m_s: number;
  readonly verticalSpeed_m_s: number;
  readonly horizontalSpeed_m_s: number;
  readonly mass_kg: number;
  readonly pitch_deg: number;
  readonly throttle: number;
}

/**
 * An invented ascent over a flat world without air: 15 m/s² along a path that leans from upright to 20° within
 * 150 s, then coasting under 9.8 m/s². Smooth, dated by no clock, and consistent: altitude is the integral of
 * the vertical speed.
 */
export function inventedAscent(rows: number, step_s: number): Instant[] {
  const found: Instant[] = [];
  const fine = 20;
  let altitude = 0;
  let up = 0;
  let along = 0;
  for (let i = 0; i < rows; i++) {
    const t = i * step_s;
    const burning = t < 150;
    const angle = angleAt(t);
    found.push({
      time_s: t,
      altitude_m: altitude,
      speed_m_s: Math.hypot(up, along),
      verticalSpeed_m_s: up,
      horizontalSpeed_m_s: along,
      mass_kg: 60_000 - 300 * Math.min(t, 150),
      pitch_deg: (angle * 180) / Math.PI,
      throttle: burning ? 1 : 0,
    });
    for (let k = 0; k < fine; k++) {
      const at = t + ((k + 0.5) * step_s) / fine;
      const push = at < 150 ? 15 : 0;
      const h = step_s / fine;
      up += h * (push * Math.sin(angleAt(at)) + (at < 150 ? 0 : -9.8));
      along += h * push * Math.cos(angleAt(at));
      altitude += h * up;
    }
  }
  return found;
}

function angleAt(t: number): number {
  const lean = Math.min(1, Math.max(0, (t - 10) / 140));
  return ((90 - 70 * lean) * Math.PI) / 180;
}

/** UTF-8 bytes of a text. */
export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** A delimited table of the given columns of instants. */
export function tableOf(
  instants: readonly Instant[],
  columns: Readonly<Record<string, (x: Instant) => number | string>>,
  separator = ',',
): string {
  const head = Object.keys(columns).join(separator);
  const rows = instants.map((x) =>
    Object.values(columns)
      .map((of) => of(x))
      .join(separator),
  );
  return `${[head, ...rows].join('\n')}\n`;
}

import type { Plan } from './types.ts';

const header = { time: 'time_s', altitude: 'altitude_m', speed: 'speed_m_s' } as const;
const RAD = 180 / Math.PI;

/**
 * A plan as a `*.plan.csv` that `readPlan` reads back: one row for each value of the axis, degrees, events at
 * rows of their own where no row has their moment.
 */
export function writePlan(plan: Plan): string {
  const { axisValues, pitch_rad, throttle, events } = plan;
  const lines = [
    [
      header[plan.axis],
      ...(pitch_rad === null ? [] : ['pitch_deg']),
      ...(throttle === null ? [] : ['throttle']),
      'event',
    ].join(','),
  ];
  const line = (at: number, row: number | null, text: string): void => {
    const cells = [String(round(at, 6))];
    if (pitch_rad !== null) cells.push(row === null ? '' : String(round(pitch_rad[row]! * RAD, 6)));
    if (throttle !== null) cells.push(row === null ? '' : String(round(throttle[row]!, 6)));
    lines.push([...cells, quoted(text)].join(','));
  };
  const texts = new Map<number, string[]>();
  for (const e of events) {
    const text = e.subject === null ? e.name : `${e.name} (${e.subject})`;
    texts.set(e.at, [...(texts.get(e.at) ?? []), text]);
  }
  const moments = [...texts.keys()].sort((a, b) => a - b);
  let next = 0;
  axisValues.forEach((at, row) => {
    while (next < moments.length && moments[next]! < at) {
      const moment = moments[next++]!;
      line(moment, null, texts.get(moment)!.join('; '));
    }
    const here = moments[next] === at ? texts.get(moments[next++]!)!.join('; ') : '';
    line(at, row, here);
  });
  for (const moment of moments.slice(next)) line(moment, null, texts.get(moment)!.join('; '));
  return `${lines.join('\r\n')}\r\n`;
}

function round(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

function quoted(text: string): string {
  return /[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

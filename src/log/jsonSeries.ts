/** A column of JSON values with the unit written beside it. */
export interface JsonSeries {
  readonly name: string;
  readonly unit: string | null;
  readonly cells: readonly unknown[];
}

type JsonObject = Readonly<Record<string, unknown>>;

const nameKeys = /^(?:name|label|channel|signal|title|id|key|variable)$/iu;
const cellKeys = /^(?:values?|data|samples|points|y)$/iu;

function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isPair(value: unknown): value is readonly [number, unknown] {
  return (
    Array.isArray(value) && value.length === 2 && typeof value[0] === 'number' && typeof value[1] !== 'object'
  );
}

/** `[{ "name": …, "unit": …, "values": […] }, …]` as columns; null for any other list. */
export function namedSeries(list: readonly unknown[]): JsonSeries[] | null {
  if (list.length < 2 || list.length > 1000) return null;
  const found: JsonSeries[] = [];
  for (const item of list) {
    if (!isObject(item)) return null;
    const entries = Object.entries(item);
    const name = entries.find(([key, value]) => nameKeys.test(key) && typeof value === 'string')?.[1];
    const cells = entries.find(([key, value]) => cellKeys.test(key) && Array.isArray(value))?.[1];
    const unit = entries.find(([key, value]) => /^units?$/iu.test(key) && typeof value === 'string')?.[1];
    if (name === undefined || cells === undefined) return null;
    found.push({
      name: String(name),
      unit: unit === undefined ? null : String(unit),
      cells: cells as unknown[],
    });
  }
  if (!found.some(({ cells }) => cells.length >= 2)) return null;
  return found.every(({ cells }) => cells.every(isPair)) ? onOneClock(found) : found;
}

/** `{ "altitude": [[time, value], …], "speed": [[time, value], …] }` as columns over one time; null otherwise. */
export function pointSeries(value: JsonObject, units: JsonObject | null): JsonSeries[] | null {
  const series = Object.entries(value).filter(
    (entry): entry is [string, unknown[]] =>
      Array.isArray(entry[1]) && entry[1].length >= 2 && entry[1].every(isPair),
  );
  if (series.length < 2 || series.length > 1000) return null;
  return onOneClock(
    series.map(([name, cells]) => {
      const unit = units !== null && Object.hasOwn(units, name) ? units[name] : null;
      return { name, unit: typeof unit === 'string' ? unit : null, cells };
    }),
  );
}

/** Series of [time, value] over the times of all of them. */
function onOneClock(series: readonly JsonSeries[]): JsonSeries[] {
  const points = series.map(({ cells }) => new Map(cells as readonly (readonly [number, unknown])[]));
  const times = [...new Set(points.flatMap((of) => [...of.keys()]))].sort((a, b) => a - b);
  return [
    { name: 'time', unit: null, cells: times },
    ...series.map((one, k) => ({ ...one, cells: times.map((t) => points[k]?.get(t) ?? null) })),
  ];
}

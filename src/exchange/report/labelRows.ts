/** A label on its row, or none where no row had room. */
export interface PlacedLabel<T> {
  readonly item: T;
  readonly x: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** 0 is the row nearest to what it labels; null = no room anywhere. */
  readonly row: number | null;
}

/** Least space between two labels on one row, px. */
const apart_px = 8;

/**
 * Puts labels under their places, those given first first, each on the nearest row where it touches no other and
 * stays inside.
 * @param letter mean width of a letter, px
 */
export function labelRows<T>(
  items: readonly { readonly item: T; readonly x: number; readonly text: string }[],
  bounds: { readonly left: number; readonly right: number },
  letter: number,
  rows: number,
): readonly PlacedLabel<T>[] {
  const taken: [number, number][][] = Array.from({ length: rows }, () => []);
  return items.map(({ item, x, text }) => {
    const half = (text.length * letter) / 2;
    const anchor = x - half < bounds.left ? 'start' : x + half > bounds.right ? 'end' : 'middle';
    const from = anchor === 'start' ? x : anchor === 'end' ? x - 2 * half : x - half;
    const to = from + 2 * half;
    const row = taken.findIndex((others) =>
      others.every(([a, b]) => to + apart_px < a || from > b + apart_px),
    );
    taken[row]?.push([from, to]);
    return { item, x, anchor, row: row < 0 ? null : row };
  });
}

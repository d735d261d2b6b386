import type { Flight } from '../flight/types.ts';
import { stitchedBest } from './stitchedBest.ts';
import { type Compared, stitchGroups, stitchNames } from './stitchGroups.ts';
import type { Stitched } from './types.ts';

/**
 * The stitched best of every group that can be stitched.
 * @param load reads an attempt's flight again, since a comparison keeps none; null where that cannot be
 */
export async function stitchAll(
  comparison: Compared,
  load: (name: string) => Promise<Flight | null>,
): Promise<Stitched[]> {
  const out: Stitched[] = [];
  for (const group of stitchGroups(comparison)) {
    const flights = [];
    for (const name of stitchNames(group)) {
      const flight = await load(name);
      if (flight !== null) flights.push({ name, flight });
    }
    out.push(stitchedBest(comparison, group.name, flights));
  }
  return out;
}

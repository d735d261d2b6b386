import type { Comparison, ComparisonGroup } from './types.ts';

/** What stitching takes of a comparison. */
export type Compared = Pick<Comparison, 'groups' | 'rows'>;

/** Of more groups than this none is stitched: it takes a re-reading of several logs for each. */
const MOST_GROUPS = 12;

/** Names of the attempts whose flights a group's stitched best takes. */
export function stitchNames({ bestPhases }: ComparisonGroup): readonly string[] {
  return [...new Set(bestPhases.map((b) => b.name))];
}

/** The groups of a comparison that can be stitched: of two attempts or more, of one rocket to one target. */
export function stitchGroups({ groups }: Compared): readonly ComparisonGroup[] {
  const able = groups.filter((g) => g.attempts > 1 && g.bestPhases.length > 0);
  return able.length > MOST_GROUPS ? [] : able;
}

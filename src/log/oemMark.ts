import { worldNames } from '../world/worldNames.ts';

/** Whether a text is an Orbit Ephemeris Message: its first keyword says so (CCSDS 502.0-B-2, §5.2.2). */
export function looksLikeOem(text: string): boolean {
  return /^[\ufeff\s]*CCSDS_OEM_VERS\s*=/u.test(text);
}

/** Name, of those known, of the world at an ephemeris's centre; null for another, and for any other text. */
export function worldOfOem(text: string): string | null {
  if (!looksLikeOem(text)) return null;
  return knownWorld(/^\s*CENTER_NAME\s*=\s*(.*)$/mu.exec(text)?.[1] ?? '');
}

/** Mars and its barycentre lie together to a metre; Earth's does not, being 4,700 km from it. */
export function knownWorld(centre: string): string | null {
  const name = centre
    .trim()
    .toLowerCase()
    .replace(/^mars barycenter$/u, 'mars');
  return worldNames.includes(name) ? name : null;
}

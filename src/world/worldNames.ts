/** Worlds that a mission card can name without describing them, and how they are written for people. */
export const worldTitles: Readonly<Record<string, string>> = { earth: 'Earth', moon: 'Moon', mars: 'Mars' };

/** Names that `worldByName` knows. */
export const worldNames: readonly string[] = Object.keys(worldTitles);

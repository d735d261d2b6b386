/** Ways to set a stretch of text apart; each keeps the text's width. Colour only ever repeats what words say. */
export interface Inks {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly alarm: (text: string) => string;
}

/** Inks of a terminal (ECMA-48 SGR) when `colour` is true, else plain text. */
export function inks(colour: boolean): Inks {
  const ink = (on: number, off: number) => (text: string) =>
    colour && text !== '' ? `\u001b[${on}m${text}\u001b[${off}m` : text;
  return { strong: ink(1, 22), faint: ink(2, 22), alarm: ink(31, 39) };
}

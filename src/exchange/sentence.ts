/** A clause as a sentence: capital first, full stop last. */
export function sentence(clause: string): string {
  const text = clause.trim();
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
}

/** Text kept from breaking between number and unit, about a ×, in `3 of 5`, or before a `·`, where a line ends. */
export function unbroken(text: string): string {
  return text
    .replace(/ × /g, '\u00a0×\u00a0')
    .replace(/ · /g, '\u00a0· ')
    .replace(/(\d) of (?=\d)/g, '$1\u00a0of\u00a0')
    .replace(/(\d) (?=(?:m\/s²|m\/s|ft\/s²|ft\/s|km|m|ft|kn|s|min|kg|t|kN|kPa|°|%)(?![\w]))/g, '$1\u00a0');
}

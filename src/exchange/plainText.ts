/**
 * Escape sequences of terminals (ECMA-48, 5th ed.): control strings (OSC, DCS, SOS, PM, APC; also unterminated),
 * control sequences (CSI) and two-character escapes, in their 7-bit and 8-bit forms.
 */
const escapeSequences = new RegExp(
  [
    '(?:\\u001b[\\]PX^_]|[\\u009d\\u0090\\u0098\\u009e\\u009f])[^\\u0007\\u001b\\u009c]*(?:\\u0007|\\u001b\\\\|\\u009c|$)',
    '(?:\\u001b\\[|\\u009b)[0-?]*[ -/]*[@-~]?',
    '\\u001b[ -/]*[0-~]?',
  ].join('|'),
  'gu',
);
const lineBreaksAndTabs = /[\t\n\v\f\r\u0085\u2028\u2029]+/gu;
/** C0, DEL and C1 controls, direction overrides and isolates (Unicode Annex 9), zero-width marks. */
const invisibles = /[\p{Cc}\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/gu;

/**
 * Text of a log or card made harmless for a terminal: escape sequences removed whole, line breaks and tabs
 * turned into single spaces, other control characters and direction overrides removed. What is left is one line.
 */
export function plainText(text: string): string {
  return text.replace(lineBreaksAndTabs, ' ').replace(escapeSequences, '').replace(invisibles, '');
}

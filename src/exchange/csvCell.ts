/** Beginnings that a spreadsheet takes for a formula or command (OWASP, CSV injection). */
const runs = /^[=+\-@\t\r]/u;

/**
 * A text as one cell of RFC 4180: quoted where it holds a comma, quote or line break, and given a leading
 * apostrophe where a spreadsheet would run it. For texts only: a number such as −12 must not come through here.
 */
export function csvCell(text: string): string {
  const harmless = runs.test(text) ? `'${text}` : text;
  return /[",\r\n]/u.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

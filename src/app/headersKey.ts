/**
 * The same for logs whose tables have the same headers in any order: what column choices are remembered by.
 * Letter case and blanks around a header do not count.
 */
export function headersKey(headers: readonly string[]): string {
  return headers
    .map((h) => h.trim().toLowerCase())
    .sort()
    .join('\n');
}

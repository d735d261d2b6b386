/** True for a text that begins as a JSON document of objects or arrays does. */
export function looksLikeJson(text: string): boolean {
  return /^\s*(?:\{\s*["}]|\[\s*[[{"\d\]-])/u.test(text.slice(0, 2000));
}

/** A name that no other flight of any book has: 128 random bits in hexadecimal. */
export function newId(): string {
  // randomUUID needs a secure context, which a page of a plain static host lacks.
  return [...crypto.getRandomValues(new Uint8Array(16))].map((b) => b.toString(16).padStart(2, '0')).join('');
}

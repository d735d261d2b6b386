/**
 * Bytes that plain data hold in memory, by count: 8 a number, 1 a letter of Latin text, and what JavaScript engines
 * add for each text, list and object. Shared parts are counted once.
 */
export function heldBytes(data: unknown): number {
  const seen = new Set<object>();
  const count = (value: unknown): number => {
    if (typeof value === 'string') return 16 + value.length;
    if (typeof value !== 'object' || value === null) return 8;
    if (seen.has(value)) return 8;
    seen.add(value);
    if (ArrayBuffer.isView(value)) return 96 + value.byteLength;
    let sum = Array.isArray(value) ? 32 : 24;
    for (const part of Object.values(value)) sum += count(part) + (typeof part === 'object' ? 8 : 0);
    return sum;
  };
  return count(data);
}

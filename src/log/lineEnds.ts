const LF = 10;
const CR = 13;

/** Bytes of a text with one byte for each line end: CR LF and CR become LF. The same array where there is no CR. */
export function unixLineEnds(bytes: Uint8Array): Uint8Array {
  const first = bytes.indexOf(CR);
  if (first < 0) return bytes;
  const out = new Uint8Array(bytes.length);
  let length = 0;
  for (let from = 0, at = first; ; ) {
    const to = at < 0 ? bytes.length : at;
    out.set(bytes.subarray(from, to), length);
    length += to - from;
    if (at < 0) break;
    out[length++] = LF;
    from = bytes[at + 1] === LF ? at + 2 : at + 1;
    at = bytes.indexOf(CR, from);
  }
  return out.subarray(0, length);
}

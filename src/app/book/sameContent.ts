const pieceBytes = 1 << 20;

/** Whether two files hold the same bytes; read piece by piece, so that large ones neither fill memory nor stall. */
export async function sameContent(a: Blob, b: Blob): Promise<boolean> {
  if (a.size !== b.size) return false;
  for (let at = 0; at < a.size; at += pieceBytes) {
    const [x, y] = await Promise.all(
      [a, b].map(async (f) => new Uint8Array(await f.slice(at, at + pieceBytes).arrayBuffer())),
    );
    if (x?.some((byte, i) => byte !== y?.[i])) return false;
  }
  return true;
}

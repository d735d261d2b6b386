/** An exported logbook begins like every ZIP archive, whatever its name. */
export async function looksLikeBook(file: Blob): Promise<boolean> {
  const head = new Uint8Array(
    await file
      .slice(0, 4)
      .arrayBuffer()
      .catch(() => new ArrayBuffer(0)),
  );
  return head[0] === 0x50 && head[1] === 0x4b && head[2] === 3 && head[3] === 4;
}

import { LossbookError } from '../../errors.ts';
import { centralHeader, deflated, endRecord, gzipFrame, localHeader } from './zip.ts';

/** The files of an archive by path; content is unpacked when it is asked for. */
export type ZipFiles = ReadonlyMap<string, () => Promise<Blob>>;

const stored = 0;
/** An archive's comment has at most 65,535 bytes: so far from its end the end record is looked for. */
const furthestEnd = endRecord.bytes + 0xffff;

async function viewOf(file: Blob, from: number, to: number): Promise<DataView> {
  return new DataView(await file.slice(from, to).arrayBuffer());
}

function findEnd(tail: DataView): number {
  for (let at = tail.byteLength - endRecord.bytes; at >= 0; at--) {
    if (tail.getUint32(at, true) === endRecord.signature) return at;
  }
  return -1;
}

/**
 * Deflated data as a gzip file again, so that the browser unpacks it and checks length and CRC-32 on the way.
 */
function asGzip(data: Blob, crc: number, size: number): Blob {
  const head = new Uint8Array([0x1f, 0x8b, deflated, 0, 0, 0, 0, 0, 0, 0xff]);
  const tail = new DataView(new ArrayBuffer(gzipFrame.tail));
  tail.setUint32(0, crc, true);
  tail.setUint32(4, size, true);
  return new Blob([head, data, tail.buffer]);
}

/**
 * Opens a ZIP archive: its list is read, contents only on demand.
 * @throws LossbookError `book-broken` for what is no whole archive; so do the contents when they are damaged
 */
export async function readZip(file: Blob, name: string): Promise<ZipFiles> {
  const broken = (reason: string) => new LossbookError('book-broken', { reason }, { file: name });
  const tailStart = Math.max(0, file.size - furthestEnd);
  const tail = await viewOf(file, tailStart, file.size);
  const at = findEnd(tail);
  if (at < 0) throw broken('its list of files is missing; the file may have been cut off');
  const count = tail.getUint16(at + 10, true);
  const listBytes = tail.getUint32(at + 12, true);
  const listStart = tail.getUint32(at + 16, true);
  if (listStart + listBytes > tailStart + at) throw broken('its list of files is damaged');
  const list = await viewOf(file, listStart, listStart + listBytes);

  const files = new Map<string, () => Promise<Blob>>();
  let next = 0;
  for (let i = 0; i < count; i++) {
    if (
      next + centralHeader.bytes > list.byteLength ||
      list.getUint32(next, true) !== centralHeader.signature
    ) {
      throw broken('its list of files is damaged');
    }
    const entry = {
      method: list.getUint16(next + 10, true),
      crc: list.getUint32(next + 16, true),
      packed: list.getUint32(next + 20, true),
      size: list.getUint32(next + 24, true),
      header: list.getUint32(next + 42, true),
    };
    const nameBytes = list.getUint16(next + 28, true);
    const nameStart = next + centralHeader.bytes;
    if (nameStart + nameBytes > list.byteLength) throw broken('its list of files is damaged');
    const path = new TextDecoder().decode(new Uint8Array(list.buffer, nameStart, nameBytes));
    next = nameStart + nameBytes + list.getUint16(next + 30, true) + list.getUint16(next + 32, true);

    files.set(path, async () => {
      const head = await viewOf(file, entry.header, entry.header + localHeader.bytes);
      if (head.byteLength < localHeader.bytes || head.getUint32(0, true) !== localHeader.signature) {
        throw broken(`${path} is damaged`);
      }
      const start = entry.header + localHeader.bytes + head.getUint16(26, true) + head.getUint16(28, true);
      const data = file.slice(start, start + entry.packed);
      if (entry.method === stored) return data;
      if (entry.method !== deflated) throw broken(`${path} is packed in a way that is not read here`);
      try {
        return await unpacked(asGzip(data, entry.crc, entry.size), entry.size);
      } catch {
        throw broken(`${path} is damaged`);
      }
    });
  }
  return files;
}

/** @throws when more comes out than the list says: a small archive must not be able to fill the machine */
async function unpacked(packed: Blob, size: number): Promise<Blob> {
  let left = size;
  const guard = new TransformStream<Uint8Array, Uint8Array>({
    transform(piece, out) {
      left -= piece.length;
      if (left < 0) throw new RangeError('longer than its list says');
      out.enqueue(piece);
    },
  });
  const content = packed.stream().pipeThrough(new DecompressionStream('gzip')).pipeThrough(guard);
  const blob = await new Response(content).blob();
  if (left !== 0) throw new RangeError('shorter than its list says');
  return blob;
}

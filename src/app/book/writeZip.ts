import { LossbookError } from '../../errors.ts';
import { centralHeader, deflated, endRecord, gzipFrame, localHeader, zipLimits } from './zip.ts';

/** A file to put into an archive. */
export interface ZipEntry {
  /** Path inside the archive, with `/`. */
  readonly path: string;
  readonly content: Blob;
}

/** File names are UTF-8 (APPNOTE 6.3, §4.4.4, bit 11). */
const utf8Flag = 0x0800;
const needsVersion = 20;
/** 1 January 1980, the format's first day: the files' own times are no part of what is kept. */
const noDate = 0x0021;

/** The fields of a header in their order, as [width in bytes, value]. */
function record(signature: number, fields: readonly (readonly [2 | 4, number])[]): Uint8Array<ArrayBuffer> {
  const bytes = new DataView(new ArrayBuffer(4 + fields.reduce((sum, [width]) => sum + width, 0)));
  bytes.setUint32(0, signature, true);
  let at = 4;
  for (const [width, value] of fields) {
    if (width === 2) bytes.setUint16(at, value, true);
    else bytes.setUint32(at, value, true);
    at += width;
  }
  return new Uint8Array(bytes.buffer);
}

/** Deflated data and CRC-32 of a file: both stand in the gzip file that the browser makes of it. */
async function deflate(content: Blob): Promise<{ readonly data: Blob; readonly crc: number }> {
  const packed = await new Response(content.stream().pipeThrough(new CompressionStream('gzip'))).blob();
  const end = packed.size - gzipFrame.tail;
  const tail = new DataView(await packed.slice(end).arrayBuffer());
  return { data: packed.slice(gzipFrame.head, end), crc: tail.getUint32(0, true) };
}

/**
 * A ZIP archive of these files, deflated. Contents are streamed, never held in memory as a whole.
 * @throws LossbookError `book-too-large` over 4 GB or 65,535 files
 */
export async function writeZip(
  entries: readonly ZipEntry[],
  onEntry: (done: number) => void = () => {},
): Promise<Blob> {
  const body: BlobPart[] = [];
  const directory: BlobPart[] = [];
  let offset = 0;
  let directoryBytes = 0;
  for (const [i, { path, content }] of entries.entries()) {
    onEntry(i);
    const { data, crc } = await deflate(content);
    const name = new TextEncoder().encode(path);
    const common = [
      [2, needsVersion],
      [2, utf8Flag],
      [2, deflated],
      [2, 0],
      [2, noDate],
      [4, crc],
      [4, data.size],
      [4, content.size],
      [2, name.length],
      [2, 0],
    ] as const;
    const head = record(localHeader.signature, common);
    body.push(head, name, data);
    const central = record(centralHeader.signature, [
      [2, needsVersion],
      ...common,
      [2, 0],
      [2, 0],
      [2, 0],
      [4, 0],
      [4, offset],
    ]);
    directory.push(central, name);
    directoryBytes += central.length + name.length;
    offset += head.length + name.length + data.size;
    const total = offset + directoryBytes + endRecord.bytes;
    if (total > zipLimits.bytes || content.size > zipLimits.bytes) {
      throw new LossbookError('book-too-large', { size: 'more than 4 GB', limit: '4 GB' });
    }
    if (i + 1 > zipLimits.entries) {
      throw new LossbookError('book-too-large', { size: `${entries.length} files`, limit: '65,535' });
    }
  }
  const end = record(endRecord.signature, [
    [2, 0],
    [2, 0],
    [2, entries.length],
    [2, entries.length],
    [4, directoryBytes],
    [4, offset],
    [2, 0],
  ]);
  return new Blob([...body, ...directory, end], { type: 'application/zip' });
}

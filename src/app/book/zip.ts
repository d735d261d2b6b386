/** Offsets and sizes of the ZIP format's records (PKWARE APPNOTE 6.3, §4.3.7, 4.3.12, 4.3.16). */
export const localHeader = { signature: 0x04034b50, bytes: 30 } as const;
export const centralHeader = { signature: 0x02014b50, bytes: 46 } as const;
export const endRecord = { signature: 0x06054b50, bytes: 22 } as const;

/** Sizes and counts are 32 and 16 bits wide without the format's extension for large files, which is not used. */
export const zipLimits = { bytes: 0xffffffff, entries: 0xffff } as const;

export const deflated = 8;

/** A gzip file without extras: ten bytes before the deflated data, CRC-32 and length after it (RFC 1952). */
export const gzipFrame = { head: 10, tail: 8 } as const;

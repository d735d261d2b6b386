import { open, readFile, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { LossbookError } from '../errors.ts';
import type { ByteSource } from '../log/byteSource.ts';
import { hurryAsUsual } from './compilerPace.ts';

/** A file's name without folders, and what it holds. */
export interface InputFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Bytes of a file, or of standard input for `-`. @throws LossbookError saying why it cannot be read. */
export async function readInput(path: string): Promise<InputFile> {
  if (path === '-') return { name: 'standard input', bytes: await readStandardInput() };
  try {
    return { name: basename(path), bytes: await readFile(path) };
  } catch (error) {
    throw unreadable(path, error);
  }
}

/** A log that is read while it lies on the disk, or one that was read whole because it is small or no plain file. */
export interface OpenedLog {
  readonly name: string;
  readonly bytes: Uint8Array | ByteSource;
  close(): Promise<void>;
}

/** Files below this are read at once. */
const LARGE_BYTES = 16e6;

/** Opens a log, or reads standard input for `-`. @throws LossbookError saying why it cannot be read. */
export async function openLog(path: string): Promise<OpenedLog> {
  const whole = async (): Promise<OpenedLog> => ({
    ...(await readInput(path)),
    close: async () => undefined,
  });
  if (path === '-') return whole();
  try {
    const { size } = await stat(path);
    if (size < LARGE_BYTES) return await whole();
    hurryAsUsual();
    const file = await open(path);
    const read: ByteSource['read'] = async (at, into) => {
      try {
        return (await file.read(into, 0, into.length, at)).bytesRead;
      } catch (error) {
        throw unreadable(path, error);
      }
    };
    return { name: basename(path), bytes: { size, read }, close: () => file.close() };
  } catch (error) {
    throw error instanceof LossbookError ? error : unreadable(path, error);
  }
}

/** Text of a mission card. @throws LossbookError when it cannot be read or is not text. */
export async function readCardText(path: string): Promise<{ name: string; text: string }> {
  const { name, bytes } = await readInput(path);
  try {
    return { name, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    throw new LossbookError('file-unreadable', { reason: 'it is not UTF-8 text' }, { file: path });
  }
}

/** @throws LossbookError unless the path is a file that can be reached. */
export async function mustBeFile(path: string): Promise<void> {
  try {
    if ((await stat(path)).isDirectory()) throw Object.assign(new Error(), { code: 'EISDIR' });
  } catch (error) {
    throw unreadable(path, error);
  }
}

/** Path of the card that lies beside a log (`NAME.mission.json` by `NAME.csv`), or null. */
export function cardBeside(log: string): Promise<string | null> {
  return fileBeside(log, ['.mission.json']);
}

/** Path of the plan that lies beside a log (`NAME.plan.csv` or `NAME.plan.json` by `NAME.csv`), or null. */
export function planBeside(log: string): Promise<string | null> {
  return fileBeside(log, ['.plan.csv', '.plan.json']);
}

async function fileBeside(log: string, endings: readonly string[]): Promise<string | null> {
  if (log === '-') return null;
  const name = basename(log)
    .replace(/\.gz$/iu, '')
    .replace(/\.[^.]+$/u, '');
  for (const ending of endings) {
    const path = join(dirname(log), `${name}${ending}`);
    try {
      if ((await stat(path)).isFile() && basename(path) !== basename(log)) return path;
    } catch {
      // It is not there: the next ending may be.
    }
  }
  return null;
}

async function readStandardInput(): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

const reasons: Readonly<Record<string, string>> = {
  EISDIR: 'it is a folder',
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  ENOTDIR: 'a part of its path is not a folder',
  ENAMETOOLONG: 'its name is too long',
  ELOOP: 'its links lead in a circle',
  ERR_FS_FILE_TOO_LARGE: 'it is larger than 2 GiB',
};

function unreadable(path: string, error: unknown): LossbookError {
  const code = errorCode(error);
  if (code === 'ENOENT') return new LossbookError('file-missing', {}, { file: path });
  return new LossbookError('file-unreadable', { reason: reasons[code] ?? code }, { file: path });
}

/** The system's code of an error, such as `EACCES`, or its message. */
export function errorCode(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return 'code' in error && typeof error.code === 'string' ? error.code : error.message;
}

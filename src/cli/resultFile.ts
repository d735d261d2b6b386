import { createReadStream } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { LossbookError } from '../errors.ts';
import { errorCode } from './inputFiles.ts';

/** A file of result lines that is gone on with. */
export interface ResultFile {
  /** Paths of the logs whose line stands in it. */
  readonly done: ReadonlySet<string>;
  readonly add: (line: string) => Promise<void>;
  readonly close: () => Promise<void>;
}

/**
 * Opens a file of result lines, or begins it. A last line that was cut short, as by a machine that stopped, is taken
 * away, so that its log is reviewed again.
 * @throws LossbookError where it cannot be read or written, or is something else
 */
export async function openResults(path: string): Promise<ResultFile> {
  try {
    const file = await open(path, 'a+');
    try {
      const { done, length } = await linesIn(path);
      await file.truncate(length);
      return resultFile(file, done, path);
    } catch (error) {
      await file.close();
      throw error;
    }
  } catch (error) {
    if (error instanceof LossbookError) throw error;
    throw new LossbookError('file-unwritable', { reason: errorCode(error) }, { file: path });
  }
}

function resultFile(file: FileHandle, done: ReadonlySet<string>, path: string): ResultFile {
  const add = async (line: string): Promise<void> => {
    try {
      await file.appendFile(line);
    } catch (error) {
      throw new LossbookError('file-unwritable', { reason: errorCode(error) }, { file: path });
    }
  };
  return { done, add, close: () => file.close() };
}

/** The logs told of in whole lines, and where the last whole line ends, in bytes. */
async function linesIn(path: string): Promise<{ done: Set<string>; length: number }> {
  const done = new Set<string>();
  let length = 0;
  let rest: Buffer[] = [];
  for await (const piece of createReadStream(path)) {
    let from = 0;
    const chunk = piece as Buffer;
    for (let at = chunk.indexOf(10); at >= 0; at = chunk.indexOf(10, from)) {
      const line = Buffer.concat([...rest, chunk.subarray(from, at)]);
      rest = [];
      from = at + 1;
      length += line.length + 1;
      done.add(logOf(line.toString('utf8'), path));
    }
    if (from < chunk.length) rest.push(chunk.subarray(from));
  }
  if (length === 0 && rest.length > 0 && !Buffer.concat(rest).toString('utf8', 0, 7).startsWith('{"log":'))
    throw otherFile(path);
  return { done, length };
}

/** The path that a line begins with. */
function logOf(line: string, path: string): string {
  const log = /^\{"log":("(?:[^"\\]|\\.)*")/u.exec(line)?.[1];
  if (log === undefined) throw otherFile(path);
  return JSON.parse(log) as string;
}

function otherFile(file: string): LossbookError {
  return new LossbookError('usage', {
    reason: `--resume ${file} is not a file of lines that --jsonl writes`,
    command: 'review',
  });
}

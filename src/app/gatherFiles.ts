/** Endings of files that can hold a log, a card or a plan. */
const readable = /\.(csv|tsv|txt|json|jsonl|ndjson|log|dat|oem|gz|zip)$/i;

/** Of a whole folder only what can be meant: no pictures, no hidden files. */
export function likelyFiles<F extends { readonly name: string }>(files: readonly F[]): F[] {
  return files.filter((f) => readable.test(f.name) && !f.name.startsWith('.'));
}

async function filesIn(entry: FileSystemEntry): Promise<File[]> {
  if (entry.isFile) {
    return [await new Promise<File>((done, fail) => (entry as FileSystemFileEntry).file(done, fail))];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const inside: File[] = [];
  for (;;) {
    // A folder is told in portions; an empty one ends it.
    const some = await new Promise<FileSystemEntry[]>((done, fail) => reader.readEntries(done, fail));
    if (some.length === 0) return likelyFiles(inside);
    for (const one of some) inside.push(...(await filesIn(one)));
  }
}

/** Files of a drop or of the clipboard, folders opened. Called while the event is handled: later nothing is told. */
export async function gatherFiles(data: DataTransfer): Promise<File[]> {
  const entries = [...data.items].map((item) => (item.kind === 'file' ? item.webkitGetAsEntry() : null));
  const plain = [...data.files];
  if (!entries.some((e) => e?.isDirectory)) return plain;
  const found = await Promise.all(entries.map((e) => (e === null ? [] : filesIn(e).catch(() => []))));
  return found.flat();
}

/** Pasted text that has the form of a log (several lines, or JSON) as a file; null for other text. */
export function pastedFile(text: string, now: Date): File | null {
  const trimmed = text.trim();
  const json = /^[[{]/.test(trimmed);
  if (!json && trimmed.split('\n').length < 3) return null;
  const moment = now.toISOString().slice(0, 19).replace('T', ' ').replaceAll(':', '.');
  return new File([text], `pasted ${moment}.${json ? 'json' : 'csv'}`);
}

const asked = new Set<string>();

/** Has the browser fetch a file of the page now; settles when a sheet of styles stands and at once for code. */
function ahead(address: string): Promise<unknown> | undefined {
  if (asked.has(address) || document.querySelector(`link[href="${address}"]`) !== null) return undefined;
  asked.add(address);
  const link = document.createElement('link');
  const styles = address.endsWith('.css');
  link.rel = styles ? 'stylesheet' : 'modulepreload';
  link.crossOrigin = '';
  link.href = address;
  document.head.append(link);
  if (!styles) return undefined;
  return new Promise((resolve, reject) => {
    link.onload = resolve;
    link.onerror = () => {
      asked.delete(address);
      link.remove();
      reject(new Error(`the page's file ${address} could not be fetched`));
    };
  });
}

/**
 * Loads a part of the page with the files that it needs, all at the same time. The build puts it around every
 * `import()`, in place of the bundler's own, which fails in a worker: there the import alone has to do.
 * @param files relative to `importer`
 */
export async function loadWith<T>(
  load: () => Promise<T>,
  files: readonly string[] = [],
  importer = '',
): Promise<T> {
  if (typeof document !== 'undefined')
    await Promise.all(files.map((file) => ahead(new URL(file, importer).href)));
  return load();
}

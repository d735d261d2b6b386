/** Hands a file to the reader as a download. */
export function saveFile(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has the content by its handle once the download has begun.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Gives a text to the maker as a file of that name, through the window's own download. */
export function saveFile(
  name: string,
  type: 'text/csv' | 'image/svg+xml' | 'text/plain',
  text: string,
): void {
  const url = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The download has its own hold on the blob once the click has been handled.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** A file name from the maker's words: lower case, no signs that a file system refuses. */
export function fileName(words: string, ending: string): string {
  const plain = words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return `${plain || 'coat'}.${ending}`;
}

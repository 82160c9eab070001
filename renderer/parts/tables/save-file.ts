/** Gives a text or bytes to the maker as a file of that name, through the window's own download. */
export function saveFile(
  name: string,
  type: 'text/csv' | 'image/svg+xml' | 'text/plain' | 'application/pdf' | 'text/html',
  content: string | Uint8Array,
): void {
  const url = URL.createObjectURL(blobOf(type, content));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The download has its own hold on the blob once the click has been handled.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

function blobOf(type: string, content: string | Uint8Array): Blob {
  if (typeof content !== 'string') return new Blob([new Uint8Array(content)], { type });
  // Spreadsheets read a file without the mark at its beginning in a code page of their own.
  const mark = type === 'text/csv' ? '\uFEFF' : '';
  return new Blob([mark + content], { type: `${type};charset=utf-8` });
}

/** A file name from the maker's words: lower case, no signs that a file system refuses. */
export function fileName(words: string, ending: string): string {
  const plain = words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return `${plain || 'coat'}.${ending}`;
}

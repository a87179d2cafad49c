/** Hands a text, or bytes, made in this page to the person as a file. */
export function download(fileName: string, content: string | Uint8Array<ArrayBuffer>, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The browser has taken hold of the bytes by the next turn.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}

/** 'Slow Water' → 'slow-water', for a file's name. */
export function fileNameOf(text: string): string {
  const name = text
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/gi, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase();
  return name === '' ? 'show' : name;
}

/** Hands a file to the browser as a download. */
export function saveFile(content: Blob, fileName: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The download reads the address after this turn; a minute is ample.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

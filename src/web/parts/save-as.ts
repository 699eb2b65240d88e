/** Puts a file among the downloads. */
export function saveAs(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads it after this turn; a minute is plenty. Assumed.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

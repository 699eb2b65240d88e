import { useEffect, useState } from 'preact/hooks';

/** An address for a blob, given back when it is no longer shown. */
export function useBlobAddress(blob: Blob | null): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (blob === null) return setAddress(null);
    const made = URL.createObjectURL(blob);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [blob]);
  return address;
}

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

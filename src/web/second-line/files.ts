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

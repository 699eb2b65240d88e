import { useEffect, useRef } from 'preact/hooks';

/**
 * A part that says what is wrong: brought into sight once it does. Of several fields at fault, the first, which is what
 * there is to begin with.
 */
export function useIntoSight<Part extends HTMLElement>(isWanted: boolean) {
  const part = useRef<Part>(null);
  useEffect(() => {
    const first = document.querySelector('[aria-invalid="true"]');
    const isBehind = first !== null && part.current?.querySelector('[aria-invalid="true"]') !== first;
    if (isWanted && !isBehind) part.current?.scrollIntoView({ block: 'nearest' });
  }, [isWanted]);
  return part;
}

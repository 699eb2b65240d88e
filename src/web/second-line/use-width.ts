import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** The width of an element in CSS pixels, followed; `assumed` until it is measured. */
export function useWidth(assumed = 640): [RefObject<HTMLDivElement>, number] {
  const element = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(assumed);
  useEffect(() => {
    if (element.current === null) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined && entry.contentRect.width > 0) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element.current);
    return () => observer.disconnect();
  }, []);
  return [element, width];
}

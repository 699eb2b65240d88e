import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** One screen: its heading is the page's title, and is where reading begins after a change of screen. */
export function Screen({ title, children }: { title: string; children: ComponentChildren }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · Halfsplit`;
  }, [title]);
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }, []);
  return (
    <>
      <h1 ref={heading} tabIndex={-1}>
        {title}
      </h1>
      {children}
    </>
  );
}

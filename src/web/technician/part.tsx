import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { useLedHere } from '../parts/led-here.ts';

/** A part of a long page, which its address can lead to (`#chain`). */
export function Part({ id, title, children }: { id: string; title: string; children: ComponentChildren }) {
  const part = useRef<HTMLElement>(null);
  useLedHere(part, location.hash === `#${id}`);
  return (
    <section class="card part" id={id} ref={part}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

import type { ComponentChildren } from 'preact';

/** A part of a long page, which its address can lead to (`#chain`). */
export function Part({ id, title, children }: { id: string; title: string; children: ComponentChildren }) {
  return (
    <section class="card part" id={id}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

import type { ComponentChildren } from 'preact';

/** What is wider than a phone by nature, such as a table: it scrolls by itself, by keyboard too, and not the page. */
export function Wide({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by keyboard
    <section class="wide" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}

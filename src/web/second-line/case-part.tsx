import type { ComponentChildren } from 'preact';

/** One part of a case, which the list of contents leads to; it folds. */
export function CasePart({
  id,
  title,
  children,
}: {
  id: string;
  title: string;
  children: ComponentChildren;
}) {
  return (
    <section class="card case-part" id={id} aria-labelledby={`${id}-title`}>
      <details class="case-fold" open>
        <summary>
          <h2 id={`${id}-title`}>{title}</h2>
        </summary>
        <div class="stack">{children}</div>
      </details>
    </section>
  );
}

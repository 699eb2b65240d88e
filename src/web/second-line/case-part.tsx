import type { ComponentChildren } from 'preact';

/** One part of a case, which the list of contents leads to; it folds. */
export function CasePart({
  id,
  title,
  digest,
  isFolded = false,
  children,
}: {
  id: string;
  title: string;
  /** What of it differs from usual, in a few words beside its heading: whoever reads it knows whether to look. */
  digest?: ComponentChildren;
  /** Folded at first. */
  isFolded?: boolean;
  children: ComponentChildren;
}) {
  return (
    <section class="card case-part" id={id} aria-labelledby={`${id}-title`}>
      <details class="case-fold" open={!isFolded}>
        <summary>
          <h2 id={`${id}-title`}>{title}</h2>
          {digest !== undefined && <span class="case-digest">{digest}</span>}
        </summary>
        <div class="stack">{children}</div>
      </details>
    </section>
  );
}

/** The part itself, and what folds within it. */
const folds = (within: ParentNode): HTMLDetailsElement[] => [
  ...within.querySelectorAll<HTMLDetailsElement>('.case-part details'),
];

/** Unfolds one part, whoever goes to it. */
export function unfold(id: string): void {
  const part = document.getElementById(id)?.querySelector<HTMLDetailsElement>('.case-fold');
  if (part != null) part.open = true;
}

/** Unfolds every part with all in it. @returns what folds those again that were */
export function unfoldAll(): () => void {
  const shut = folds(document).filter(({ open }) => !open);
  for (const one of shut) one.open = true;
  return () => {
    for (const one of shut) one.open = false;
  };
}

import type { ComponentChildren } from 'preact';

export function Card({ title, children }: { title?: string; children: ComponentChildren }) {
  return (
    <section class="card">
      {title !== undefined && <h2>{title}</h2>}
      {children}
    </section>
  );
}

/** A list of things, said as one by screen readers. */
export function List({ children }: { children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noRedundantRoles: a list without bullets is said as none by one browser's screen reader
    <ul class="list" role="list">
      {children}
    </ul>
  );
}

/** A row of a list that leads to its own screen. The first child should be a `strong`. */
export function ListLink({ href, children }: { href: string; children: ComponentChildren }) {
  return (
    <li>
      <a class="list-link" href={href}>
        {children}
      </a>
    </li>
  );
}

const isEmpty = (value: ComponentChildren): boolean =>
  value === null || value === '' || value === undefined || (Array.isArray(value) && value.length === 0);

/** Names and values: `[name, value]`. Values that are null or empty are left out. */
export function Facts({ facts }: { facts: readonly (readonly [string, ComponentChildren])[] }) {
  const given = facts.filter(([, value]) => !isEmpty(value));
  return (
    <dl class="facts">
      {given.map(([name, value]) => (
        <>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </>
      ))}
    </dl>
  );
}

import type { Kinds } from './values.ts';

/** What a change is called in a message: by its kind, or by the name of the organisation's own kind. */
export const namedChange = ({
  kind,
  own,
}: {
  kind: Extract<Kinds['changeKind'], string>;
  own?: { readonly name: string } | null | undefined;
}): Kinds['changeKind'] => (own === null || own === undefined ? kind : { own: own.name });

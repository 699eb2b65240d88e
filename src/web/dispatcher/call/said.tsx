import type { Said } from '../../words/sentence.tsx';

/** A sentence in the language it is in. */
export function SaidText({ said: { text, lang } }: { said: Said }) {
  return <span {...(lang === undefined ? {} : { lang })}>{text}</span>;
}

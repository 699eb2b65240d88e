import type { ComponentChild } from 'preact';
import { type Erasure, withErasuresApart, withErasuresTold } from '../../../shared/contract/erased-text.ts';
import { message } from '../../../shared/message/index.ts';
import { paths } from '../api/paths.ts';
import { useDocument } from '../store/documents.ts';
import { inWords, said } from '../words/sentence.tsx';

// A text of a person may have been erased. What is shown in its place is ours: when, and by whom.

/** What a person typed, as they did; of what was erased, when and by whom it was. */
export function typed(text: string): ComponentChild {
  const pieces = withErasuresApart(text);
  if (pieces.every((piece) => typeof piece === 'string')) return text;
  return pieces.map((piece, at) =>
    typeof piece === 'string' ? piece : <Erased key={`${at} ${piece.at}`} erasure={piece} />,
  );
}

function Erased({ erasure: { at, by } }: { erasure: Erasure }) {
  const member = useDocument(paths.members).body?.items.find(({ id }) => id === by);
  return (
    <em>
      {inWords(
        member === undefined ? message('erased', { at }) : message('erasedBy', { at, by: member.name }),
      )}
    </em>
  );
}

/** The same as plain text, for names of pictures and such. */
export const typedText = (text: string): string =>
  withErasuresTold(text, ({ at }) => said(message('erased', { at })).text);

/** Several texts in a row, those left out that say nothing. */
export const typedInRow = (texts: readonly (string | null)[], between = ', '): ComponentChild =>
  texts
    .filter((text) => text !== null && text !== '')
    .map((text, at) => [at > 0 && between, typed(text ?? '')]);

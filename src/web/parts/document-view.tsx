import type { ComponentChildren } from 'preact';
import { reachable } from '../api/session.ts';
import type { DocumentState } from '../store/documents.ts';
import { frameWords } from '../words/frame.ts';
import { Notice } from './notice.tsx';
import { Refusal } from './refusal.tsx';

/** Draws a document once there is one, and says why when there is none. */
export function DocumentView<Body>({
  document,
  children,
}: {
  document: DocumentState<Body>;
  children: (body: Body) => ComponentChildren;
}) {
  const { body, refused, isLoading } = document;
  if (refused !== null) return <Refusal problem={refused} />;
  if (body !== null) return <>{children(body)}</>;
  if (isLoading && reachable.value) return <p role="status">{frameWords().loading} …</p>;
  return <Notice tone="caution">{frameWords().notHere}</Notice>;
}

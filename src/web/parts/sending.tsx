import { useRef, useState } from 'preact/hooks';
import type { Problem } from '../../../shared/contract/problem.ts';
import { write } from '../api/client.ts';
import { sessionState } from '../api/session.ts';
import { frameWords } from '../words/frame.ts';
import { Lapsed } from './lapsed.tsx';
import { Notice } from './notice.tsx';
import { Refusal } from './refusal.tsx';

type Wanted = { body?: unknown; ifMatch?: string };
export type Sending = {
  readonly isBusy: boolean;
  readonly problem: Problem | null;
  readonly isUnreachable: boolean;
  /** @returns the reply's body and tag; null when it was refused or nobody answered, which the state then says */
  send<Body>(
    method: 'POST' | 'PUT' | 'DELETE',
    path: string,
    wanted?: Wanted,
  ): Promise<{ body: Body; etag: string | null } | null>;
  /** Takes the refusal away. */
  clear(): void;
};

/**
 * A form that writes with a connection. Sending the same again after no answer uses the same Idempotency-Key, so that
 * nothing is done twice.
 */
export function useSending(): Sending {
  const [state, setState] = useState({
    isBusy: false,
    problem: null as Problem | null,
    isUnreachable: false,
  });
  const lastTry = useRef<{ what: string; key: string } | null>(null);
  const isBusy = useRef(false);
  return {
    ...state,
    clear: () => setState({ isBusy: false, problem: null, isUnreachable: false }),
    send: async <Body,>(method: 'POST' | 'PUT' | 'DELETE', path: string, { body, ifMatch }: Wanted = {}) => {
      if (isBusy.current) return null;
      isBusy.current = true;
      const what = JSON.stringify([method, path, body, ifMatch]);
      const key = lastTry.current?.what === what ? lastTry.current.key : crypto.randomUUID();
      lastTry.current = { what, key };
      setState({ isBusy: true, problem: null, isUnreachable: false });
      const answer = await write<Body>(method, path, {
        ...(body === undefined ? {} : { body }),
        ...(ifMatch === undefined ? {} : { ifMatch }),
        key,
      });
      isBusy.current = false;
      const problem = answer.kind === 'refused' ? answer.problem : null;
      setState({ isBusy: false, problem, isUnreachable: answer.kind === 'unreachable' });
      if (answer.kind !== 'unreachable') lastTry.current = null;
      return answer.kind === 'ok' ? { body: answer.body, etag: answer.etag } : null;
    },
  };
}

/** Why what was sent did not go through. */
export function SendingResult({ sending }: { sending: Sending }) {
  if (sending.problem !== null) return <Refusal problem={sending.problem} />;
  if (!sending.isUnreachable) return null;
  if (sessionState.value.kind === 'lapsed') return <Lapsed text={frameWords().lapsedHere} announce />;
  return (
    <Notice tone="caution" announce>
      {frameWords().noAnswer}
    </Notice>
  );
}

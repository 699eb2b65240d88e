import { draftsNamed } from '../../store/use-draft.ts';
import { callId } from './call-id.ts';

const prefix = 'call ';
export const callDraft = (id: string): string => prefix + id;

/** A call that was begun on this device and is not a ticket yet. */
export type BegunCall = { id: string; siteId: string | null; typed: string; isInOtherTab: boolean };

/** A tab holds a lock while a call is on its screen. */
const lockOf = (id: string): string => `halfsplit-call-${id}`;

async function heldCalls(): Promise<Set<string>> {
  const { held = [] } = await navigator.locks.query();
  return new Set(held.flatMap(({ name = '' }) => name));
}

/** @returns what to call when the call leaves the screen */
export function holdCall(id: string): () => void {
  let release: () => void = () => undefined;
  const held = new Promise<void>((done) => {
    release = done;
  });
  void navigator.locks.request(lockOf(id), () => held);
  return release;
}

export async function begunCalls(): Promise<BegunCall[]> {
  const held = await heldCalls();
  return (await draftsNamed(prefix)).flatMap(([name, kept]) => {
    const { siteId = null, typed = '' } = (kept ?? {}) as Partial<BegunCall>;
    const id = name.slice(prefix.length);
    return siteId === null && typed.trim() === ''
      ? []
      : { id, siteId, typed, isInOtherTab: held.has(lockOf(id)) };
  });
}

/** The call to go on with in a tab that names none: one that was begun and is in no other tab, else a new one. */
export async function callToGoOnWith(): Promise<string> {
  const begun = await begunCalls();
  return begun.find(({ isInOtherTab }) => !isInOtherTab)?.id ?? callId();
}

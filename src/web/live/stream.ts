import { signal } from '@preact/signals';
import { createParser, type EventSourceMessage } from 'eventsource-parser';
import { addresses } from '../../../shared/contract/addresses.ts';
import type { News } from '../../../shared/contract/news.ts';
import { send } from '../api/client.ts';
import { session, sessionState } from '../api/session.ts';
import { onTabMessage, tellTabs } from '../store/channel.ts';
import { markOld } from '../store/documents.ts';
import { sendNow } from '../store/sender.ts';
import { concerns } from './concerns.ts';

/** Whether changes arrive as they happen, in this tab. */
export const isLive = signal(false);

/** Seconds between tries; assumed, with a part by chance so that not all phones come back at once. */
const waitS = [1, 2, 4, 8, 15, 30] as const;
/** A stream without any sign of life for this long is taken for dead; the server gives one every 20 s. */
const silenceMs = 50_000;

/**
 * Follows the server's changes (server-sent events; read with fetch, since EventSource can't send the token in a
 * header) and has the documents concerned read again. One tab of a browser follows and tells the others.
 */
export function startLive(): void {
  onTabMessage((message) => {
    if (message.kind === 'news' && message.memberId === session.peek()?.member.id)
      take(message.event, message.data);
  });
  let stop: AbortController | null = null;
  let followed: string | null = null;
  sessionState.subscribe((state) => {
    const memberId = state.kind === 'signedIn' ? state.session.member.id : null;
    if (memberId === followed) return;
    followed = memberId;
    stop?.abort();
    stop = null;
    if (memberId === null) return;
    stop = new AbortController();
    void followAlone(memberId, stop.signal);
  });
}

async function followAlone(memberId: string, signal: AbortSignal): Promise<void> {
  await navigator.locks
    .request(`halfsplit-live-${memberId}`, { signal }, () => follow(memberId, signal))
    .catch(() => undefined);
}

async function follow(memberId: string, signal: AbortSignal): Promise<void> {
  let lastId: string | null = null;
  let attempt = 0;
  while (!signal.aborted) {
    const opened = await readStream(signal, lastId, (message) => {
      attempt = 0;
      // What was read before the first stream began may have changed since; after a break the server says `resync`.
      const event = message.event === 'open' && lastId === null ? 'resync' : message.event;
      lastId = message.id ?? lastId;
      if (event !== 'change' && event !== 'resync') return;
      take(event, message.data);
      tellTabs({ kind: 'news', memberId, event, data: message.data });
    });
    isLive.value = false;
    if (opened && attempt === 0) attempt = 1;
    else attempt += 1;
    const seconds = waitS[Math.min(attempt, waitS.length) - 1] ?? 30;
    await pause(seconds * (750 + Math.random() * 500), signal);
  }
}

/** @returns whether the stream was opened, once it has ended */
async function readStream(
  signal: AbortSignal,
  lastId: string | null,
  onEvent: (message: EventSourceMessage) => void,
): Promise<boolean> {
  const silence = new AbortController();
  let timer = setTimeout(() => silence.abort(), silenceMs);
  const either = AbortSignal.any([signal, silence.signal]);
  try {
    const reply = await send(addresses.events, {
      headers: { accept: 'text/event-stream', ...(lastId === null ? {} : { 'last-event-id': lastId }) },
      signal: either,
    });
    if (reply === null || !reply.ok || reply.body === null) return false;
    isLive.value = true;
    void sendNow();
    const parser = createParser({ onEvent });
    const reader = reply.body.pipeThrough(new TextDecoderStream()).getReader();
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return true;
      clearTimeout(timer);
      timer = setTimeout(() => silence.abort(), silenceMs);
      parser.feed(value);
    }
  } catch {
    return false;
  } finally {
    clearTimeout(timer);
  }
}

function take(event: string, data: string): void {
  try {
    markOld(event === 'resync' ? () => true : concerns(JSON.parse(data) as News));
  } catch {
    // News of a kind that this version does not know: better to read too much than too little.
    markOld(() => true);
  }
}

/** Waits, but not when the browser says that there is a connection again. */
const pause = (ms: number, signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    const done = () => {
      clearTimeout(timer);
      removeEventListener('online', done);
      signal.removeEventListener('abort', done);
      resolve();
    };
    const timer = setTimeout(done, ms);
    addEventListener('online', done);
    signal.addEventListener('abort', done);
  });

import { createParser, type EventSourceMessage } from 'eventsource-parser';

export type EventReader = {
  readonly status: number;
  readonly type: string | null;
  readonly events: readonly EventSourceMessage[];
  readonly comments: readonly string[];
  /** Waits for the first event that fits, seen already or still to come, 10 s at the most. */
  until(fits: (event: EventSourceMessage) => boolean): Promise<EventSourceMessage>;
  /** Resolves when the server ends the stream. */
  readonly ended: Promise<void>;
  close(): void;
};

/** Follows /events over a real connection, as the client does. */
export async function followEvents(
  base: string,
  accessToken: string | null,
  headers: Record<string, string> = {},
): Promise<EventReader> {
  const stop = new AbortController();
  const answer = await fetch(`${base}/events`, {
    headers: { ...headers, ...(accessToken === null ? {} : { authorization: `Bearer ${accessToken}` }) },
    signal: stop.signal,
  });
  const events: EventSourceMessage[] = [];
  const comments: string[] = [];
  const waiting = new Set<() => void>();
  const parser = createParser({
    onEvent: (event) => {
      events.push(event);
      for (const look of waiting) look();
    },
    onComment: (comment) => {
      comments.push(comment);
    },
  });
  const ended = (async () => {
    const decoder = new TextDecoder();
    try {
      for await (const bytes of answer.body ?? []) parser.feed(decoder.decode(bytes, { stream: true }));
    } catch (error) {
      if (!stop.signal.aborted) throw error;
    }
  })();
  ended.catch(() => undefined);
  return {
    status: answer.status,
    type: answer.headers.get('content-type'),
    events,
    comments,
    ended,
    close: () => stop.abort(),
    until: (fits) =>
      new Promise((resolve, reject) => {
        const giveUp = setTimeout(() => reject(new Error(`saw only ${JSON.stringify(events)}`)), 10_000);
        const look = () => {
          const event = events.find(fits);
          if (event === undefined) return;
          clearTimeout(giveUp);
          waiting.delete(look);
          resolve(event);
        };
        waiting.add(look);
        look();
      }),
  };
}

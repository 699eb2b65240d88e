import { z } from 'zod';
import { type News, type NewsKind, news, newsKinds } from '../../../shared/contract/news.ts';
import { id } from '../../../shared/contract/primitives.ts';
import { type Database, newsChannel } from '../../database/index.ts';
import { type AccessClaims, access, type Permission } from '../../http/index.ts';

/** What the triggers tell: news, with whom it is for; and that a session ended, which is nobody's news. */
const told = news.extend({
  kind: z.enum([...newsKinds, 'session']),
  org: id,
  granteeOrg: id.optional(),
  granteeMember: id.optional(),
});
type Told = z.infer<typeof told>;
const heard = z.union([z.object({ kind: z.literal('lost') }), told]);

/** One open stream. */
export type Subscriber = {
  readonly claims: AccessClaims;
  change(changed: News): void;
  /** Something may have been missed: read again what is on the screen. */
  resync(): void;
  end(): void;
};

/** Who hears of what: those who may read it. */
const readers: Record<NewsKind, Permission> = {
  ticket: 'read tickets',
  site: 'read sites',
  chain: 'read chains',
  evidence: 'read evidence',
  packet: 'read packets',
  grant: 'grant packets',
  grantedPacket: 'read granted packets',
  member: 'read members',
  organisation: 'read organisation',
  firmwareLevel: 'read firmware levels',
};

/** Hands what the database tells to the open streams, each within its organisation and role. */
export class NewsHub {
  readonly #subscribers = new Set<Subscriber>();
  #stop: (() => Promise<void>) | null = null;

  async open(database: Database): Promise<void> {
    const missed = (): void => {
      for (const subscriber of this.#subscribers) subscriber.resync();
    };
    this.#stop = await database.listen(newsChannel, {
      heard: (payload) => {
        const news = heard.parse(JSON.parse(payload));
        if (news.kind === 'lost') missed();
        else this.#tell(news as Told);
      },
      missed,
    });
  }

  /** @returns how to leave again */
  add(subscriber: Subscriber): () => void {
    this.#subscribers.add(subscriber);
    return () => this.#subscribers.delete(subscriber);
  }

  countOf(memberId: string): number {
    return [...this.#subscribers].filter(({ claims }) => claims.sub === memberId).length;
  }

  streamsOf(orgId: string): number {
    return [...this.#subscribers].filter(({ claims }) => claims.org === orgId).length;
  }

  /** Ends the member's stream that has been open for longest, to make room for another. */
  endOldestOf(memberId: string): void {
    [...this.#subscribers].find(({ claims }) => claims.sub === memberId)?.end();
  }

  /** Ends every stream, so that the server can close. */
  endAll(): void {
    for (const subscriber of this.#subscribers) subscriber.end();
  }

  #endStreamsOf(sessionId: string): void {
    for (const subscriber of this.#subscribers) if (subscriber.claims.sid === sessionId) subscriber.end();
  }

  async close(): Promise<void> {
    await this.#stop?.();
  }

  #tell({ org, granteeOrg, granteeMember, ...told }: Told): void {
    if (told.kind === 'session') this.#endStreamsOf(told.id);
    else this.#tellReaders({ ...told, kind: told.kind }, { org, granteeOrg, granteeMember });
  }

  #tellReaders(
    changed: News,
    { org, granteeOrg, granteeMember }: Pick<Told, 'org' | 'granteeOrg' | 'granteeMember'>,
  ): void {
    for (const subscriber of this.#subscribers) {
      const { claims } = subscriber;
      if (claims.org === org) tellInside(subscriber, changed);
      if (claims.org === granteeOrg && claims.sub === granteeMember && mayHear(claims, 'grantedPacket')) {
        // The ids of the organisation that grants are none of the grantee's business; the packet's is.
        const { packetId } = changed;
        if (packetId !== undefined) subscriber.change({ kind: 'grantedPacket', id: packetId });
      }
    }
  }
}

const mayHear = (claims: AccessClaims, kind: NewsKind): boolean =>
  (access[readers[kind]] as readonly string[]).includes(claims.role);

function tellInside(subscriber: Subscriber, changed: News): void {
  if (mayHear(subscriber.claims, changed.kind)) subscriber.change(changed);
  // Their role may be another from now on, or they may be out: whoever still may, comes back at once.
  if (changed.kind === 'member' && changed.id === subscriber.claims.sub) subscriber.end();
}

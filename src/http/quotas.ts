import { type QuotaName, quotaNames } from '../../shared/contract/quota-names.ts';
import type { Usage } from '../../shared/contract/usage.ts';
import { type Message, message } from '../../shared/message/index.ts';
import type { TenantTransaction } from '../database/index.ts';
import { type Refused, refused } from './problem.ts';

/** Says how much an organisation uses, in a transaction of its own. */
type Meter = (orgId: string, tx: TenantTransaction) => number | Promise<number>;

declare module 'fastify' {
  interface FastifyInstance {
    quotas: Quotas;
  }
}

const megabyte = 1_000_000;
const said: Readonly<Record<QuotaName, (most: number) => Message>> = {
  openUploads: (most) => message('quotaOpenUploads', { most }),
  storedBytes: (most) => message('quotaStoredBytes', { mostMB: Math.floor(most / megabyte) }),
  eventStreams: (most) => message('quotaEventStreams', { most }),
  requestsPerMin: (most) => message('quotaRequests', { most }),
};
/** What passes by itself is asked for again; of the rest somebody has to use less. */
const passesInS: Partial<Record<QuotaName, number>> = { eventStreams: 30, requestsPerMin: 60 };

/** What organisations may use. Each is measured by the feature that it is about. */
export class Quotas {
  readonly #most: Readonly<Record<QuotaName, number>>;
  readonly #meters = new Map<QuotaName, Meter>();

  constructor(most: Readonly<Record<QuotaName, number>>) {
    this.#most = most;
  }

  measureBy(quota: QuotaName, meter: Meter): void {
    this.#meters.set(quota, meter);
  }

  /** What an organisation uses of each, beside the most that it may. */
  async usageOf(orgId: string, tx: TenantTransaction): Promise<Usage[]> {
    const usage: Usage[] = [];
    for (const quota of quotaNames)
      usage.push({ quota, used: await this.#used(quota, orgId, tx), most: this.#most[quota] });
    return usage;
  }

  /** Why an organisation may not use so much more; null where it may. */
  async refusalOf(
    quota: QuotaName,
    adding: number,
    { orgId, tx }: { readonly orgId: string; readonly tx: TenantTransaction },
  ): Promise<Refused | null> {
    return (await this.#used(quota, orgId, tx)) + adding > this.#most[quota] ? this.refusal(quota) : null;
  }

  /** Why no more is to be had of it. */
  refusal(quota: QuotaName): Refused {
    const why = said[quota](this.#most[quota]);
    const retryAfterS = passesInS[quota];
    return retryAfterS === undefined
      ? refused('quota-reached', why)
      : refused('too-many-requests', why, { retryAfterS });
  }

  async #used(quota: QuotaName, orgId: string, tx: TenantTransaction): Promise<number> {
    return (await this.#meters.get(quota)?.(orgId, tx)) ?? 0;
  }
}

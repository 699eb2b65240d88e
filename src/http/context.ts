import type { LanguageTag } from '../../shared/contract/language-names.ts';
import type { TenantTransaction } from '../database/index.ts';
import type { Services } from '../services.ts';
import type { Actor } from './actor.ts';

/** What every use case works with: the transaction of its tenant, who asks, and what it needs of the outside world. */
export type Context = {
  readonly tx: TenantTransaction;
  readonly actor: Actor;
  readonly services: Services;
  /** What the caller asked to be spoken to in; replies are put into it when they leave. */
  readonly language: LanguageTag;
};

import type { Chain } from '../../../shared/contract/chain.ts';
import type { OrganisationSettings } from '../../../shared/contract/organisation.ts';
import { type BudgetReply, budgetReply } from '../../../shared/contract/signal.ts';
import { chainSignal } from '../../../shared/signal/chain-signal.ts';
import { compareWithout } from '../../../shared/signal/link-budget/index.ts';
import { replyTask } from '../../heavy-work/task.ts';

export type ChainToBudget = {
  readonly version: number;
  readonly chain: Chain;
  readonly wanted: Chain['wantedFormats'];
  /** A device of the chain. */
  readonly without: string | undefined;
  readonly figures: OrganisationSettings;
};

/** Link budget, content protection and 5 V power of a chain; some megabytes for the largest. */
export const budgetWork = replyTask(
  'budget',
  budgetReply,
  ({ version, chain, wanted, without, figures }: ChainToBudget): BudgetReply => {
    const { budget, ...others } = chainSignal(chain, figures, wanted);
    return {
      version,
      budget,
      comparison:
        without === undefined
          ? null
          : compareWithout(chain, wanted, without, { assumptions: figures.budget }).formats,
      ...others,
    };
  },
);

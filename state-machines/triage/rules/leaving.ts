import { displaysOf, downstreamOf, sourcesOf } from '../../../shared/chain/graph.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import { message } from '../../../shared/message/message.ts';
import { signed } from '../record.ts';
import { because } from './refusal.ts';
import { noWatchRuns, rule } from './rule.ts';

type Pair = { sourceId: string; displayId: string };

/** Every source with every display that its picture can come to. */
export const picturesToCheck = (chain: Chain): Pair[] =>
  sourcesOf(chain).flatMap(({ id: sourceId }) => {
    const reached = downstreamOf(chain, sourceId);
    return displaysOf(chain).flatMap(({ id: displayId }) =>
      reached.has(displayId) ? [{ sourceId, displayId }] : [],
    );
  });

const keyOf = ({ sourceId, displayId }: Pair): string => `${sourceId} ${displayId}`;

/** Not checked is an answer; leaving a source or a display out is none. */
export const checkBeforeLeaving = rule('checkBeforeLeaving', {
  ready: noWatchRuns,
  refuse: (record, { pictures }) => {
    const chain = record.asFound?.chain;
    if (chain === undefined) return because('not-allowed-now', message('recordAsFoundFirst'));
    const answered = new Set(pictures.map(keyOf));
    const left = picturesToCheck(chain).filter((pair) => !answered.has(keyOf(pair)));
    return left.length === 0
      ? null
      : because('invalid-input', message('picturesLeftOut', { count: left.length }));
  },
  apply: (record, { pictures, sound, usualStart, note, ...event }) => ({
    ...record,
    leavingCheck: { pictures, sound, usualStart, note, ...signed(event) },
  }),
});

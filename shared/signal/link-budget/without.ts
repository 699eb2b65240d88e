import { namedPlace } from '../../chain/named-place.ts';
import type { Chain, VideoFormat, WantedFormat } from '../../contract/chain.ts';
import { type Message, message, type NamedPlace } from '../../message/index.ts';
import type { BudgetOptions, ChainBudget, WantedOverall } from './budget.ts';
import { chainBudget } from './chain-budget.ts';
import { linkVerdicts } from './verdict.ts';

export type FormatWithAndWithout = {
  wanted: VideoFormat;
  withIt: WantedOverall;
  withoutIt: WantedOverall;
  /** What taking the device out does for this format. */
  effect: 'better' | 'worse' | 'same';
  sentence: Message;
};

export type DeviceComparison = {
  deviceId: string;
  withIt: ChainBudget;
  withoutIt: ChainBudget;
  formats: FormatWithAndWithout[];
};

/**
 * Two budgets of one chain, with a device and without it, side by side for each wanted format: why a chain that worked
 * without the device can fail with it.
 */
export function compareWithout(
  chain: Chain,
  wantedFormats: readonly WantedFormat[],
  deviceId: string,
  options: Omit<BudgetOptions, 'without'> = {},
): DeviceComparison {
  const withIt = chainBudget(chain, wantedFormats, options);
  const withoutIt = chainBudget(chain, wantedFormats, { ...options, without: deviceId });
  const formats = withIt.wanted.flatMap((before, at): FormatWithAndWithout[] => {
    const after = withoutIt.wanted[at];
    if (after === undefined) return [];
    const gained = linkVerdicts.indexOf(before.verdict) - linkVerdicts.indexOf(after.verdict);
    const effect = gained > 0 ? 'better' : gained < 0 ? 'worse' : 'same';
    const sentence = sentenceOf(namedPlace(chain, { kind: 'device', deviceId }), { before, after }, effect);
    return [{ wanted: before.wanted, withIt: before, withoutIt: after, effect, sentence }];
  });
  return { deviceId, withIt, withoutIt, formats };
}

function sentenceOf(
  device: NamedPlace,
  { before, after }: { before: WantedOverall; after: WantedOverall },
  effect: FormatWithAndWithout['effect'],
): Message {
  const { wanted: format, sentence: withIt } = before;
  const { sentence: withoutIt } = after;
  switch (effect) {
    case 'better':
      return after.verdict === 'fits'
        ? message('fitsWithoutDevice', { device, format, withIt })
        : message('getsFurtherWithoutDevice', { device, format, withIt });
    case 'worse':
      return message('worseWithoutDevice', { device, withoutIt });
    case 'same':
      return before.verdict === 'fits'
        ? message('fitsWithAndWithoutDevice', { device, format })
        : message('sameWithoutDevice', { device, format, withoutIt });
  }
}

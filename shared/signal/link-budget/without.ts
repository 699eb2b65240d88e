import { deviceName } from '../../chain/place.ts';
import { formatName } from '../../chain/signal-mode.ts';
import type { Chain, VideoFormat } from '../../contract/chain.ts';
import type { BudgetOptions, ChainBudget, WantedOverall } from './budget.ts';
import { chainBudget } from './chain-budget.ts';
import { linkVerdicts } from './verdict.ts';

export type FormatWithAndWithout = {
  wanted: VideoFormat;
  withIt: WantedOverall;
  withoutIt: WantedOverall;
  /** What taking the device out does for this format. */
  effect: 'better' | 'worse' | 'same';
  sentence: string;
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
  wantedFormats: readonly VideoFormat[],
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
    const sentence = sentenceOf(deviceName(chain, deviceId), before, after, effect);
    return [{ wanted: before.wanted, withIt: before, withoutIt: after, effect, sentence }];
  });
  return { deviceId, withIt, withoutIt, formats };
}

function sentenceOf(
  device: string,
  before: WantedOverall,
  after: WantedOverall,
  effect: FormatWithAndWithout['effect'],
): string {
  const format = formatName(before.wanted);
  const outcome = after.verdict === 'fits' ? 'fits everywhere' : 'gets further';
  switch (effect) {
    case 'better':
      return `Without ${device}, ${format} ${outcome}. With it: ${before.sentence}`;
    case 'worse':
      return `Without ${device} it is worse: ${after.sentence}`;
    case 'same':
      return before.verdict === 'fits'
        ? `${format} fits with ${device} and without it.`
        : `${device} makes no difference to ${format}: ${after.sentence}`;
  }
}

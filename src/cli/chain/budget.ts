import { type Message, messageKey } from '../../../shared/message/index.ts';
import { type ChainSignal, chainSignal } from '../../../shared/signal/chain-signal.ts';
import { inEnglish, print, withSentences } from '../program/output.ts';
import type { Command } from '../program/program.ts';
import { readChain } from './read-chain.ts';

export const budget: Command = {
  name: 'budget',
  operands: 'FILE',
  summary: 'Which wanted formats arrive, and what limits them; exit code 1 where one does not arrive.',
  more: 'Content protection, return audio and the 5 V lines are told of too; they do not change the exit code.',
  options: {
    json: {
      help: 'everything as one JSON object, its fields named as in the reply of GET /chains/{id}/budget',
    },
  },
  async run({ operands: [file = ''], isOn }) {
    const chain = await readChain(file);
    if (chain === null) return 1;
    const signal = chainSignal(chain, {});
    if (isOn('json')) await print(JSON.stringify(withSentences(signal), null, 1));
    else await print(asText(signal));
    const { wanted } = signal.budget;
    return wanted.some(({ verdict }) => verdict === 'short' || verdict === 'notOffered') ? 1 : 0;
  },
};

function asText({ budget: { wanted, links }, contentProtection, returnAudio, power }: ChainSignal): string {
  return [
    section(
      'Formats',
      wanted.map(({ sentence }) => sentence),
    ),
    ...links.map(({ name, wanted: onLink }) =>
      section(
        inEnglish(name),
        onLink.map(({ sentence }) => sentence),
      ),
    ),
    section('Content protection', [
      ...contentProtection.hops.map(({ sentence }) => sentence),
      ...contentProtection.displays.map(({ sentence }) => sentence),
      ...contentProtection.topology.filter(({ within }) => !within).map(({ sentence }) => sentence),
    ]),
    section(
      'Return audio',
      returnAudio.map(({ sentence }) => sentence),
    ),
    section(
      '5 V',
      power.map(({ sentence }) => sentence),
    ),
  ]
    .filter((part) => part !== null)
    .join('\n\n');
}

/** A heading and what is said under it, each sentence once; null where there is nothing. */
function section(title: string, said: readonly Message[]): string | null {
  const distinct = [...new Map(said.map((each) => [messageKey(each), each])).values()];
  return distinct.length === 0 ? null : [title, ...distinct.map((each) => `  ${inEnglish(each)}`)].join('\n');
}

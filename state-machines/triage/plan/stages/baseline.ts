import type { Finding } from '../../../../shared/contract/chain.ts';
import type { Offer } from '../../../../shared/contract/plan.ts';
import { type Message, message } from '../../../../shared/message/message.ts';
import type { Asked } from '../asked.ts';
import { offering, type Stage, stage } from '../offer.ts';

/** What has to be known before the fault is looked for. */
export function baselineStage({ record, chainVersion, known: { findings } }: Asked): Stage {
  const open: [boolean, Message, Offer][] = [
    [
      record.audit === null,
      message('lookThroughAudit'),
      offering({ type: 'reviewAudit', chainVersion, note: '' }),
    ],
    [record.whatChanged === null, message('askWhatChanged'), offering({ type: 'answerWhatChanged' })],
    [
      record.asFound === null,
      message('recordChainAsFound'),
      offering({ type: 'recordAsFound', chainVersion }),
    ],
  ];
  const left = open.filter(([isOpen]) => isOpen);
  const urgent = findings.find(({ severity }) => severity === 'mustFix');
  const sentences = [
    message('beforeLooking', { todo: left.map(([, order]) => order) }),
    ...(urgent === undefined ? [] : [worthKnowing(urgent)]),
  ];
  return stage(
    message('sentences', { sentences }),
    left.map(([, , offer]) => offer),
  );
}

const worthKnowing = ({ text, whatToDo }: Finding): Message =>
  message('worthKnowingFirst', { finding: text, whatToDo });

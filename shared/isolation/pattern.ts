import type { OnlyWith, Pattern } from '../contract/triage.ts';
import { type Message, message } from '../message/message.ts';

/** How the fault comes, in words. */
export function patternSaid(pattern: Pattern): Message {
  switch (pattern.kind) {
    case 'always':
      return message('comesAlways');
    case 'trigger':
      return message('comesOnTrigger', { trigger: pattern.trigger });
    case 'random':
      return message(pattern.rarely ? 'comesRarely' : 'comesAtRandom');
    case 'bursts':
      return message('comesInBursts');
    case 'warm':
      return message('comesOnceWarm', { after: pattern.afterMin });
    case 'notKnown':
      return message('patternNotKnown');
  }
}

/** What the fault shows with and not without, in words. */
export const onlyWithSaid = ({ kind, what }: OnlyWith): Message =>
  what === '' ? message('showsOnlyWithOne', { kind }) : message('showsOnlyWith', { kind, what });

import { placeKey } from '../../../shared/chain/place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { Offer, PlannedTestView, PlanReply } from '../../../shared/contract/plan.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { type Step, toSayOf } from './fill-in.ts';

export type About = {
  /** An order without a full stop; what the last of the commands is called, where left out. */
  text?: Message;
  why?: Message;
  watchMin?: number | null;
  test?: PlannedTestView;
};

/** A way on, yet to be put to the rules (accepted.ts). */
export function offering(steps: Step | readonly Step[], about: About = {}): Offer {
  const all = (Array.isArray(steps) ? steps : [steps]) as Step[];
  const last = all.at(-1)?.type ?? 'note';
  return {
    key: all.map(keyOf).join(', '),
    steps: all as Offer['steps'],
    toSay: toSayOf(all),
    text: about.text ?? message('commandLabel', { command: last }),
    why: about.why ?? null,
    watchMin: about.watchMin ?? null,
    test: about.test ?? null,
  };
}

/** What makes two steps of one type ask for different things; how long a watch is planned is none of it. */
const telling = [
  'kind',
  'target',
  'place',
  'menu',
  'menuDeviceId',
  'deviceId',
  'changeId',
  'watchId',
  'occurrenceId',
  'requestId',
  'mode',
  'from',
  'moment',
  'portId',
  'trigger',
  'triggerKind',
  'way',
  'heard',
  'oneOfTwo',
] as const;

function keyOf(step: Step): string {
  const about = {
    ...('remedy' in step ? step.remedy : {}),
    ...('what' in step && typeof step.what === 'object' ? step.what : {}),
    ...(step.type === 'amendIntake' ? step.symptom?.pattern : {}),
  };
  const content = { ...step, ...about } as Record<string, unknown>;
  const parts = telling.flatMap((field) => {
    const value = content[field];
    if (value === undefined || value === null || value === false) return [];
    return [typeof value === 'object' ? placeKey(value as Place) : String(value)];
  });
  return [step.type, ...parts].join(' ');
}

/** What a ticket asks for in the stage it is in: what to do in a sentence or two, and the ways on, the advised one first. */
export type Stage = {
  sentence: Message;
  offers: readonly Offer[];
  /** Given where looking on is over. */
  stop: PlanReply['stop'];
  /** What the client chooses between; empty where the next step is worth its time. */
  ways: PlanReply['ways'];
};
export const stage = (sentence: Message, offers: readonly Offer[]): Stage => ({
  sentence,
  offers,
  stop: null,
  ways: [],
});

import type { TicketCommand, TicketCommandType } from '../../../shared/contract/commands.ts';
import type { LookSent } from '../../../shared/contract/look.ts';
import type { Offer } from '../../../shared/contract/plan.ts';

type InPart<Value> = Value extends string | number | boolean | null | undefined
  ? Value
  : { [Key in keyof Value]?: InPart<Value[Key]> };
/** A command with what is known of it. */
export type Step = {
  [Type in TicketCommandType]: { type: Type } & InPart<Extract<TicketCommand, { type: Type }>>;
}[TicketCommandType];

/** What only a person can say of a command; `waivers.reason` is in each of a list. */
function saidOf(step: Step): readonly string[] {
  switch (step.type) {
    case 'answerWhatChanged':
      return ['answers'];
    case 'recordLook':
      return toLookAt[step.what?.kind ?? 'setting'];
    case 'startWatch':
      return step.mode === 'trigger' && step.trigger == null && !isNamed(step.triggerKind) ? ['trigger'] : [];
    case 'declareChange':
      return ['expected'];
    case 'judgeRetest':
    case 'close':
      return step.override == null ? [] : ['override.reason'];
    case 'nameCulprit':
      return step.confirmation?.kind === 'notDone' ? ['explanation', 'confirmation.reason'] : ['explanation'];
    case 'leaveInPlace':
      return ['owner', 'safety', 'clientsYes', 'firmware.level'];
    case 'endUnattended':
      return ['firmware.level'];
    case 'chooseRemedy':
      return step.remedy?.kind === 'workaround'
        ? ['remedy.what', 'remedy.limits', 'remedy.acceptedBy']
        : ['remedy.what'];
    case 'escalate':
      return ['question', 'waivers.reason'];
    case 'resubmit':
      return ['waivers.reason'];
    case 'recordChoice':
      return ['chosenBy'];
    case 'replaceOnSuspicion':
      return ['what'];
    case 'waitFor':
      return ['what', 'until'];
    case 'note':
    case 'answerRequest':
    case 'directStep':
      return ['text'];
    case 'askForMore':
      return ['requests'];
    case 'acceptCase':
      return ['finding'];
    default:
      return reasoned.has(step.type) ? ['reason'] : [];
  }
}
/** What whoever looks has to say. */
const toLookAt: Record<LookSent['kind'], readonly string[]> = {
  signal: ['what.said'],
  menu: ['what.survivesLossOfInput', 'what.keepsFormat'],
  portMode: ['what.found'],
  setting: ['what.key', 'what.value'],
  witness: ['what.answer'],
};

/** Whether a trigger's name alone says what to do. */
const isNamed = (triggerKind: string | null | undefined): boolean =>
  triggerKind != null && triggerKind !== 'other';

const reasoned: ReadonlySet<TicketCommandType> = new Set([
  'withdrawOccurrence',
  'correctOccurrence',
  'voidWatch',
  'withdrawSide',
  'withdrawChange',
  'locateSideAgain',
  'goOnWithoutSide',
  'withdrawLook',
  'withdrawCulprit',
  'withdrawRemedy',
  'faultCameBack',
  'reopen',
  'recall',
  'handBack',
]);

type Plain = Record<string, unknown>;
const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether a field is left out; in a list, in any of its elements. */
function lacks(value: unknown, [first, ...rest]: readonly string[]): boolean {
  if (first === undefined) return value === undefined || value === null;
  if (Array.isArray(value)) return value.some((each) => lacks(each, [first, ...rest]));
  return lacks(isPlain(value) ? value[first] : undefined, rest);
}

/** A copy with a field set where it is left out. */
function withField(value: unknown, [first, ...rest]: readonly string[], said: unknown): unknown {
  if (first === undefined) return value ?? said;
  if (Array.isArray(value)) return value.map((each) => withField(each, [first, ...rest], said));
  const plain = isPlain(value) ? value : {};
  return { ...plain, [first]: withField(plain[first], rest, said) };
}

const toSayIn = (step: Step): string[] => saidOf(step).filter((path) => lacks(step, path.split('.')));

/** What is left to be said of commands, each field once. */
export const toSayOf = (steps: readonly Step[]): string[] => [...new Set(steps.flatMap(toSayIn))];

/**
 * An offer's commands, ready to be sent.
 *
 * @param said by field, as in the offer's `toSay`
 */
export function filledIn({ steps }: Pick<Offer, 'steps'>, said: Readonly<Plain>): TicketCommand[] {
  return (steps as readonly Step[]).map(
    (step) =>
      toSayIn(step).reduce<unknown>(
        (filled, path) => withField(filled, path.split('.'), said[path]),
        step,
      ) as TicketCommand,
  );
}

/** What somebody says who looked and could not tell. */
const nothingSeen: Readonly<Record<string, unknown>> = {
  'what.said': { kind: 'read', receives: null, sends: null, intended: [] },
  'what.survivesLossOfInput': 'unknown',
  'what.keepsFormat': 'unknown',
  'what.found': { kind: 'nothingToSet' },
  'what.answer': 'cannotSay',
};

/** In place of what a person will say, so that the rules can be asked beforehand; they look at none of it. */
export function standInFor(path: string): unknown {
  if (path === 'answers') return [{ kind: 'notKnown', text: '', when: null }];
  if (Object.hasOwn(nothingSeen, path)) return nothingSeen[path];
  if (path === 'requests') return [{ item: null, text: '…' }];
  if (path === 'safety') return { ...leftSafely };
  if (path === 'clientsYes')
    return { name: '…', at: '2000-01-01T00:00:00.000Z', whatChanges: '…', howToUndo: '…' };
  if (path === 'until') return '2199-12-31T00:00:00.000Z';
  return '…';
}

const leftSafely = {
  liesAcrossFloor: false,
  hangs: false,
  staysOpen: false,
  lacksCooling: false,
  defeatsProtection: false,
};

import { typedBefore } from '../../../../shared/contract/erased-text.ts';
import type { Intake, TicketSummary } from '../../../../shared/contract/ticket.ts';
import type { OnlyWith, Pattern } from '../../../../shared/contract/triage.ts';
import { contentKinds, onlyWithKinds, patternTriggers } from '../../../../shared/contract/triage-names.ts';

export type SymptomKind = TicketSummary['symptom'];
export const contentChoices = ['notKnown', ...contentKinds] as const;
/** How the fault comes, as it is asked: at random and rarely are two answers to the caller. */
export const patternChoices = [
  'always',
  'trigger',
  'random',
  'rarely',
  'bursts',
  'warm',
  'notKnown',
] as const;
export const triggerChoices = patternTriggers;
export const onlyWithChoices = ['anything', ...onlyWithKinds] as const;
export const often = ['minute', 'hour', 'day', 'week'] as const;
export const lasting = ['s', 'min', 'h'] as const;
const hours: Record<(typeof often)[number], number> = { minute: 1 / 60, hour: 1, day: 24, week: 168 };
/** As the contract bounds a number of minutes. */
const longestWarmUpMin = 10_080;
const seconds: Record<(typeof lasting)[number], number> = { s: 1, min: 60, h: 3600 };

/** What the client said, as it stands in the fields. */
export type Answers = {
  symptom: SymptomKind | null;
  times: string;
  timesPer: (typeof often)[number];
  lasts: string;
  lastsIn: (typeof lasting)[number];
  pattern: (typeof patternChoices)[number];
  trigger: (typeof triggerChoices)[number] | null;
  warmAfterMin: string;
  onlyWith: (typeof onlyWithChoices)[number];
  onlyWithWhat: string;
  onlyWithDevice: string | null;
  sources: string[];
  displays: string[];
  content: Intake['content'];
  contentText: string;
  since: string;
  workedBefore: 'yes' | 'no' | 'notKnown';
  changed: { kind: Intake['whatChanged'][number]['kind']; text: string; when: string }[];
  tried: string;
  promised: string;
  callerName: string;
  callerPhone: string;
  callerRelation: string;
  notes: string;
};
export const noAnswers: Answers = {
  symptom: null,
  times: '',
  timesPer: 'hour',
  lasts: '',
  lastsIn: 's',
  pattern: 'notKnown',
  trigger: null,
  warmAfterMin: '',
  onlyWith: 'anything',
  onlyWithWhat: '',
  onlyWithDevice: null,
  sources: [],
  displays: [],
  content: 'notKnown',
  contentText: '',
  since: '',
  workedBefore: 'notKnown',
  changed: [],
  tried: '',
  promised: '',
  callerName: '',
  callerPhone: '',
  callerRelation: '',
  notes: '',
};

/** A positive number as people write it, with comma or point; null where there is none. */
const positive = (text: string): number | null => {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(value) && value > 0 ? value : null;
};

/** Whether "how often?" is a question: not of what is always there, or comes when something is done. */
export const comesAtARate = ({ pattern }: Answers): boolean => pattern !== 'always' && pattern !== 'trigger';

function patternOf({ pattern, trigger, warmAfterMin }: Answers): Pattern {
  switch (pattern) {
    case 'trigger':
      return { kind: 'trigger', trigger: trigger ?? 'other' };
    case 'random':
    case 'rarely':
      return { kind: 'random', rarely: pattern === 'rarely' };
    case 'warm': {
      const after = positive(warmAfterMin);
      return { kind: 'warm', afterMin: after === null ? null : Math.min(longestWarmUpMin, after) };
    }
    default:
      return { kind: pattern };
  }
}

function onlyWithOf({ onlyWith, onlyWithWhat, onlyWithDevice }: Answers): OnlyWith | null {
  if (onlyWith === 'anything') return null;
  return { kind: onlyWith, what: onlyWithWhat, deviceId: onlyWith === 'source' ? onlyWithDevice : null };
}

function answersOfPattern({ pattern, onlyWith }: Intake['symptom']) {
  const after = pattern.kind === 'warm' ? pattern.afterMin : null;
  return {
    pattern: pattern.kind === 'random' && pattern.rarely ? ('rarely' as const) : pattern.kind,
    trigger: pattern.kind === 'trigger' ? pattern.trigger : null,
    warmAfterMin: after === null ? '' : rounded(after),
    onlyWith: onlyWith?.kind ?? ('anything' as const),
    onlyWithWhat: typedBefore(onlyWith?.what ?? ''),
    onlyWithDevice: onlyWith?.deviceId ?? null,
  };
}

/** The answers as the API takes them; a symptom has to be there. */
export function intakeOf(answers: Answers & { symptom: SymptomKind }): Intake {
  const times = positive(answers.times);
  const lasts = positive(answers.lasts);
  return {
    reporter: { name: answers.callerName, phone: answers.callerPhone, relation: answers.callerRelation },
    symptom: {
      kind: answers.symptom,
      perHour:
        times === null || !comesAtARate(answers) ? null : Math.min(3600, times / hours[answers.timesPer]),
      lastsS: lasts === null ? null : Math.min(86_400, lasts * seconds[answers.lastsIn]),
      pattern: patternOf(answers),
      onlyWith: onlyWithOf(answers),
    },
    affectedSources: answers.sources,
    affectedDisplays: answers.displays,
    affectedContent: answers.contentText,
    content: answers.content,
    since: answers.since,
    workedBefore: answers.workedBefore === 'notKnown' ? null : answers.workedBefore === 'yes',
    whatChanged: answers.changed.map(({ kind, text, when }) => ({
      kind,
      text,
      when: when === '' ? null : when,
    })),
    triedOnPhone: answers.tried,
    promised: answers.promised,
    notes: answers.notes,
  };
}

/** The other way round: a ticket's intake as fields. */
export function answersOf(intake: Intake): Answers {
  const { perHour, lastsS } = intake.symptom;
  const timesPer = perHour === null || perHour >= 0.5 ? 'hour' : 'day';
  return {
    symptom: intake.symptom.kind,
    times: perHour === null ? '' : rounded(perHour * hours[timesPer]),
    timesPer,
    lasts: lastsS === null ? '' : rounded(lastsS),
    lastsIn: 's',
    ...answersOfPattern(intake.symptom),
    sources: intake.affectedSources,
    displays: intake.affectedDisplays,
    content: intake.content,
    contentText: typedBefore(intake.affectedContent),
    since: typedBefore(intake.since),
    workedBefore: intake.workedBefore === null ? 'notKnown' : intake.workedBefore ? 'yes' : 'no',
    changed: intake.whatChanged.map(({ kind, text, when }) => ({
      kind,
      text: typedBefore(text),
      when: typedBefore(when ?? ''),
    })),
    tried: typedBefore(intake.triedOnPhone),
    promised: typedBefore(intake.promised),
    callerName: intake.reporter.name,
    callerPhone: intake.reporter.phone,
    callerRelation: typedBefore(intake.reporter.relation),
    notes: typedBefore(intake.notes),
  };
}

const unlessErased = (now: string, before: string): string => (now === typedBefore(before) ? before : now);

function onlyWithUnlessErased({ onlyWith: now }: Intake['symptom'], { onlyWith: before }: Intake['symptom']) {
  return now === null || before === null || now.kind !== before.kind
    ? now
    : { ...now, what: unlessErased(now.what, before.what) };
}

/** An intake that was edited. What was erased is not shown in its field, and stays erased unless something is written there. */
export function keepingErased(edited: Intake, before: Intake): Intake {
  return {
    ...edited,
    reporter: {
      ...edited.reporter,
      relation: unlessErased(edited.reporter.relation, before.reporter.relation),
    },
    symptom: { ...edited.symptom, onlyWith: onlyWithUnlessErased(edited.symptom, before.symptom) },
    affectedContent: unlessErased(edited.affectedContent, before.affectedContent),
    since: unlessErased(edited.since, before.since),
    triedOnPhone: unlessErased(edited.triedOnPhone, before.triedOnPhone),
    promised: unlessErased(edited.promised, before.promised),
    notes: unlessErased(edited.notes, before.notes),
    whatChanged: edited.whatChanged.map((one) => {
      const was = before.whatChanged.find(({ kind }) => kind === one.kind);
      return {
        ...one,
        text: unlessErased(one.text, was?.text ?? ''),
        when: unlessErased(one.when ?? '', was?.when ?? '') || null,
      };
    }),
  };
}
const rounded = (value: number): string => String(Math.round(value * 100) / 100);

import { typedBefore } from '../../../../shared/contract/erased-text.ts';
import type { Intake, TicketSummary } from '../../../../shared/contract/ticket.ts';
import { contentKinds, momentKinds } from '../../../../shared/contract/triage-names.ts';

export type SymptomKind = TicketSummary['symptom'];
export const contentChoices = ['notKnown', ...contentKinds] as const;
export const momentChoices = ['notKnown', ...momentKinds] as const;
export const often = ['minute', 'hour', 'day', 'week'] as const;
export const lasting = ['s', 'min', 'h'] as const;
const hours: Record<(typeof often)[number], number> = { minute: 1 / 60, hour: 1, day: 24, week: 168 };
const seconds: Record<(typeof lasting)[number], number> = { s: 1, min: 60, h: 3600 };

/** What the client said, as it stands in the fields. */
export type Answers = {
  symptom: SymptomKind | null;
  times: string;
  timesPer: (typeof often)[number];
  lasts: string;
  lastsIn: (typeof lasting)[number];
  sources: string[];
  displays: string[];
  content: Intake['content'];
  contentText: string;
  moment: Intake['moment'];
  since: string;
  workedBefore: 'yes' | 'no' | 'notKnown';
  changed: { kind: Intake['whatChanged'][number]['kind']; text: string; when: string }[];
  tried: string;
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
  sources: [],
  displays: [],
  content: 'notKnown',
  contentText: '',
  moment: 'notKnown',
  since: '',
  workedBefore: 'notKnown',
  changed: [],
  tried: '',
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

/** The answers as the API takes them; a symptom has to be there. */
export function intakeOf(answers: Answers & { symptom: SymptomKind }): Intake {
  const times = positive(answers.times);
  const lasts = positive(answers.lasts);
  return {
    reporter: { name: answers.callerName, phone: answers.callerPhone, relation: answers.callerRelation },
    symptom: {
      kind: answers.symptom,
      perHour: times === null ? null : Math.min(3600, times / hours[answers.timesPer]),
      lastsS: lasts === null ? null : Math.min(86_400, lasts * seconds[answers.lastsIn]),
    },
    affectedSources: answers.sources,
    affectedDisplays: answers.displays,
    affectedContent: answers.contentText,
    content: answers.content,
    moment: answers.moment,
    since: answers.since,
    workedBefore: answers.workedBefore === 'notKnown' ? null : answers.workedBefore === 'yes',
    whatChanged: answers.changed.map(({ kind, text, when }) => ({
      kind,
      text,
      when: when === '' ? null : when,
    })),
    triedOnPhone: answers.tried,
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
    sources: intake.affectedSources,
    displays: intake.affectedDisplays,
    content: intake.content,
    contentText: typedBefore(intake.affectedContent),
    moment: intake.moment,
    since: typedBefore(intake.since),
    workedBefore: intake.workedBefore === null ? 'notKnown' : intake.workedBefore ? 'yes' : 'no',
    changed: intake.whatChanged.map(({ kind, text, when }) => ({
      kind,
      text: typedBefore(text),
      when: typedBefore(when ?? ''),
    })),
    tried: typedBefore(intake.triedOnPhone),
    callerName: intake.reporter.name,
    callerPhone: intake.reporter.phone,
    callerRelation: typedBefore(intake.reporter.relation),
    notes: typedBefore(intake.notes),
  };
}

const unlessErased = (now: string, before: string): string => (now === typedBefore(before) ? before : now);

/** An intake that was edited. What was erased is not shown in its field, and stays erased unless something is written there. */
export function keepingErased(edited: Intake, before: Intake): Intake {
  return {
    ...edited,
    reporter: {
      ...edited.reporter,
      relation: unlessErased(edited.reporter.relation, before.reporter.relation),
    },
    affectedContent: unlessErased(edited.affectedContent, before.affectedContent),
    since: unlessErased(edited.since, before.since),
    triedOnPhone: unlessErased(edited.triedOnPhone, before.triedOnPhone),
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

import type { Chain } from '../../shared/contract/chain.ts';
import type { TicketCommand, TicketCommandType } from '../../shared/contract/commands.ts';
import type { CameBackAnswer, LastedAnswer } from '../../shared/contract/diary-names.ts';
import type { EvidenceRef } from '../../shared/contract/evidence.ts';
import type { InstalledPart } from '../../shared/contract/installed.ts';
import type { LookOf } from '../../shared/contract/look.ts';
import type { OwnChange } from '../../shared/contract/own-change.ts';
import type { MemberRole } from '../../shared/contract/primitives.ts';
import type {
  AuditFinding,
  AuditFindings,
  ChangeRecord,
  CompletenessItem,
  Escalation,
  Judgement,
  QuietProof,
  Remedy,
  SideObservation,
  TriageRecord,
  TriageSettings,
  UnattendedWatch,
  Wait,
  Watch,
  WorkingState,
} from '../../shared/contract/triage.ts';

type ReplacedOnSuspicion = Extract<Remedy, { kind: 'onSuspicion' }>;

/** Who sends a command. */
export type Actor = { memberId: string; role: MemberRole };

/** Who sent it, and when the server (or the phone, while it is offline) took it: UTC, ISO 8601. */
export type Stamp = { at: string; by: string; role: MemberRole };
type CommandOf<Type extends TicketCommandType> = Extract<TicketCommand, { type: Type }>;

/** What the prerequisite audit says of a chain, and which devices' firmware is below the organisation's level. */
export type AuditKnown = { findings: AuditFinding[]; firmwareBelowLevel: string[] };

/** What `completeCommand` adds to a command, and its event keeps. */
type Additions = {
  recordAsFound: { chain: Chain };
  startWatch: { watchId: string };
  recordOccurrence: { occurrenceId: string };
  confirmOccurrence: { occurrenceId: string };
  declareChange: { changeId: string };
  leaveInPlace: { unattendedId: string };
  enterLateChange: { changeId: string };
  askForMore: { requests: { requestId: string; item: CompletenessItem | null; text: string }[] };
  directStep: { requestId: string };
  recordLook: { lookId: string };
  /** As left, where parts were put in; events of before that have neither. */
  finishRemedy: { installed?: InstalledPart[]; chain?: Chain };
};
/** What it adds for the outcome to be computed from; the event holds the outcome in its place. */
type Known = {
  /** The organisation's figures now; left out where the sender does not know them. */
  figures?: TriageSettings;
};
type KnownTo = {
  reviewAudit: Known & { audit: AuditKnown };
  /** The organisation's own kind that the command names; null for every other kind, and where there is none such. */
  declareChange: Known & { own?: OwnChange | null };
  enterLateChange: Known & { own?: OwnChange | null };
};
type AdditionsTo<Type> = Type extends keyof Additions ? Additions[Type] : unknown;
type ContentOf<Type extends TicketCommandType> = Omit<CommandOf<Type>, keyof AdditionsTo<Type> | 'shown'> &
  AdditionsTo<Type> &
  Stamp;
/** What the sender was shown of the outcome: it is compared with what is decided, and not kept. */
type ShownWith<Type extends TicketCommandType> = Pick<
  CommandOf<Type>,
  Extract<keyof CommandOf<Type>, 'shown'>
>;
type Complete<Type extends TicketCommandType> = Type extends TicketCommandType
  ? ContentOf<Type> &
      ShownWith<Type> &
      (Type extends keyof KnownTo ? { known: KnownTo[Type] } : { known?: Known })
  : never;

/** News of the evidence store: nobody asks the machine for it by command, and nothing is left to decide. */
export type EvidenceAdded = { type: 'evidenceAdded'; evidence: EvidenceRef; happenedAt?: string } & Stamp;
export type EvidenceWithdrawn = {
  type: 'evidenceWithdrawn';
  evidenceId: string;
  reason: string;
  happenedAt?: string;
} & Stamp;

/** News of a client's diary: opened, closed before its day, and what the client reports and answers by it. */
export type DiaryOpened = {
  type: 'diaryOpened';
  diaryId: string;
  until: string;
  happenedAt?: string;
} & Stamp;
export type DiaryClosed = { type: 'diaryClosed'; diaryId: string; happenedAt?: string } & Stamp;
export type OccurrenceReported = {
  type: 'occurrenceReported';
  reportId: string;
  diaryId: string;
  /** By the client's account; UTC, ISO 8601. */
  occurredAt: string;
  happenedAt?: string;
} & Stamp;
export type ReportAnswered = {
  type: 'reportAnswered';
  reportId: string;
  lasted: LastedAnswer | null;
  cameBack: CameBackAnswer | null;
  happenedAt?: string;
} & Stamp;
export type News =
  | EvidenceAdded
  | EvidenceWithdrawn
  | DiaryOpened
  | DiaryClosed
  | OccurrenceReported
  | ReportAnswered;

/** What `decide` takes: a ticket command made complete (who and when, ids, what the outcome hangs on), or news. */
export type CompleteCommand = Complete<TicketCommandType> | News;
export type CompleteCommandType = CompleteCommand['type'];
export type CompleteCommandOf<Type extends CompleteCommandType> = Extract<CompleteCommand, { type: Type }>;

type JudgementFacts = Omit<Judgement, 'at' | 'by'>;

/** What was decided on a command, by type; commands that are not here leave nothing to decide. */
export type Outcomes = {
  reviewAudit: { findings: AuditFindings; firmwareBelowLevel: string[] };
  startWatch: Pick<Watch, 'purpose' | 'trigger' | 'triggerKind' | 'startedAt' | 'menuDeviceId' | 'changeId'>;
  concludeSide: Pick<SideObservation, 'side' | 'proof'>;
  recordLook: {
    /** The change that is in place meanwhile. */
    changeId: string | null;
    /** What the device said the time before, where it says the same. */
    before: ({ lookId: string } & Pick<LookOf<'signal'>['what'], 'receives' | 'sends' | 'intended'>) | null;
  };
  declareChange: Pick<
    ChangeRecord,
    'declaredAt' | 'diagnostic' | 'plainCorrection' | 'canBeUndone' | 'showsCulprit' | 'own'
  >;
  enterLateChange: Pick<
    ChangeRecord,
    'diagnostic' | 'plainCorrection' | 'canBeUndone' | 'showsCulprit' | 'own' | 'finishedAt'
  > & { status: 'applied' | 'restored' | 'kept' };
  applyChange: { changeId: string; appliedAt: string };
  withdrawChange: { changeId: string; finishedAt: string };
  leaveInPlace: Pick<UnattendedWatch, 'changeId' | 'startedAt'>;
  endUnattended: { unattendedId: string; endedAt: string };
  restoreChange: { changeId: string; finishedAt: string };
  keepChange: {
    changeId: string;
    finishedAt: string;
    oneOfTwo: ChangeRecord['oneOfTwo'];
    /** With one of two faults put right: the watches that show how often the other one comes. */
    watchIds: string[];
  };
  judgeRetest: { changeId: string; judgement: JudgementFacts };
  withdrawCulprit: { resumeAt: WorkingState };
  chooseRemedy: { quietProof: QuietProof | null };
  waitFor: Pick<Wait, 'leftInPlace'>;
  replaceOnSuspicion: Pick<ReplacedOnSuspicion, 'chance' | 'acceptedBy' | 'acceptedAt'>;
  close: {
    proof: NonNullable<TriageRecord['closing']>['proof'];
    /** When the client is to be asked how it holds; null where that is proven. */
    followUpBy: string | null;
  };
  recordFollowUp: { askBy: string | null };
  /** The watches that count as the reproduction of the round that begins. */
  faultCameBack: { watchIds: string[] };
  escalate: Pick<Escalation, 'version' | 'question' | 'waivers' | 'waived' | 'takenBy'>;
  resubmit: Pick<Escalation, 'version' | 'question' | 'waivers' | 'waived' | 'takenBy'>;
};
export type OutcomeOf<Type> = Type extends keyof Outcomes ? Outcomes[Type] : null;
type Decided<Type extends TicketCommandType> = Type extends TicketCommandType
  ? ContentOf<Type> & (Type extends keyof Outcomes ? { outcome: Outcomes[Type] } : unknown)
  : never;

/** The organisation's figures are others than the ticket was worked by so far. Comes before what is decided by them. */
export type FiguresChanged = {
  type: 'figuresChanged';
  settings: TriageSettings;
  happenedAt?: string;
} & Stamp;
/** After a correction the fault counts as never seen: the reproduction that was accepted falls. */
export type ReproductionRevised = { type: 'reproductionRevised'; happenedAt?: string } & Stamp;
/** After a correction the watches at a device say something else of the side; null: they say nothing any more. */
export type SideRevised = {
  type: 'sideRevised';
  deviceId: string;
  outcome: Outcomes['concludeSide'] | null;
  happenedAt?: string;
} & Stamp;
/**
 * After a correction a retest says something else; null: nothing any more. What a person decided by hand stays, with
 * their reason, which is in the event of then. Whether a change stays as one of perhaps two may fall with it.
 */
export type JudgementRevised = {
  type: 'judgementRevised';
  outcome: {
    changeId: string;
    judgement: Omit<JudgementFacts, 'override'> | null;
    oneOfTwo: ChangeRecord['oneOfTwo'];
  };
  happenedAt?: string;
} & Stamp;
/** After a correction nothing shows the culprit any more, or that the fault returned without the change. */
export type CulpritRevised = {
  type: 'culpritRevised';
  outcome: Outcomes['withdrawCulprit'];
  happenedAt?: string;
} & Stamp;
/** After a correction “no fault found” does not hold. */
export type RemedyRevised = { type: 'remedyRevised'; happenedAt?: string } & Stamp;
/** What follows from a command beside its own event; `decide` puts it before or after that. */
export type Consequence =
  | FiguresChanged
  | ReproductionRevised
  | SideRevised
  | JudgementRevised
  | CulpritRevised
  | RemedyRevised;
export type ConsequenceType = Consequence['type'];

/**
 * What a ticket's log holds and the machine takes: what was decided, with its outcome. `evolve` takes it into the
 * record and computes nothing.
 */
export type TriageEvent = Decided<TicketCommandType> | News | Consequence;
export type TriageEventType = TriageEvent['type'];
export type EventOf<Type extends TriageEventType> = Extract<TriageEvent, { type: Type }>;

type Moment = { at: string; happenedAt?: string | undefined };
/** When it happened: by the sender's clock where it was offline, else when it was taken. */
export const momentOf = ({ at, happenedAt }: Moment): string => happenedAt ?? at;

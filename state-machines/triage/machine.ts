import { assign, setup } from 'xstate';
import type { TriageRecord, WorkingState } from '../../shared/contract/triage.ts';
import { workingStates } from '../../shared/contract/triage-names.ts';
import type { TriageEvent } from './events.ts';
import { type InvariantName, invariants } from './invariants.ts';
import { type Opening, openingRecord } from './opening.ts';
import { changeInPlace, isBaselineComplete, isSideSettled } from './record.ts';
import { consequences } from './rules/consequences.ts';
import { rules } from './rules/index.ts';
import {
  comeBackTo,
  correcting,
  culpritFalls,
  deciding,
  enteringLate,
  finishingChange,
  interruptedIn,
  remedyFalls,
  replacing,
  take,
  watching,
  withdrawingRemedy,
} from './transitions.ts';

/** Goes up whenever a stored log could replay to another snapshot; snapshots and events name it. */
export const MACHINE_VERSION = 2;

type Moment = { context: TriageRecord; event: TriageEvent };
function tableOf<Name extends string, Made>(
  names: readonly Name[],
  make: (name: Name) => Made,
): Record<Name, Made> {
  return Object.fromEntries(names.map((name) => [name, make(name)])) as Record<Name, Made>;
}
const namesIn = <Name extends string>(table: Record<Name, unknown>) => Object.keys(table) as Name[];

const changeRecord = (change: (moment: Moment) => Partial<TriageRecord>) =>
  assign<TriageRecord, TriageEvent, undefined, TriageEvent, never>(change);
type Effect = (record: TriageRecord, event: TriageEvent) => TriageRecord;

const triage = setup({
  types: { context: {} as TriageRecord, events: {} as TriageEvent, input: {} as Opening },
  guards: {
    hold: ({ context, event }: Moment, names: readonly InvariantName[]) =>
      names.every((name) => invariants[name](context, event)),
    resumesAt: ({ context }: Moment, state: WorkingState) => context.resumeAt === state,
    baselineComplete: ({ context }: Moment) => isBaselineComplete(context),
    reproductionFell: ({ context }: Moment) => !context.reproductionAccepted,
    sideFell: ({ context }: Moment) => !isSideSettled(context),
    judgementFell: ({ context }: Moment) => changeInPlace(context)?.judgement === null,
  },
  actions: {
    ...tableOf(namesIn(rules), (name) =>
      changeRecord(({ context, event }) => rules[name].apply(context, event)),
    ),
    ...tableOf(namesIn(consequences), (name) =>
      changeRecord(({ context, event }) => (consequences[name] as Effect)(context, event)),
    ),
    ...tableOf(workingStates.map(comeBackTo), (name) => {
      const resumeAt = workingStates.find((state) => comeBackTo(state) === name) ?? null;
      return changeRecord(() => ({ resumeAt }));
    }),
    forgetWhereToResume: changeRecord(() => ({ resumeAt: null })),
  },
});

/**
 * The way of a ticket from the call to its end, over events that were decided. Pure: the context is the triage record
 * and nothing else. What is asked of an event here are the invariants; what may be asked of the ticket, and what comes
 * of it, is decided before by the rules (decide.ts).
 */
export const triageMachine = triage.createMachine({
  id: 'triage',
  context: ({ input }) => openingRecord(input),
  initial: 'baseline',
  on: {
    note: take('note'),
    amendIntake: take('amendIntake', 'ticketIsOpen'),
    answerWhatChanged: take('answerWhatChanged', 'ticketIsOpen'),
    answerRequest: take('answerRequest', 'ticketIsOpen'),
    recordLook: take('recordLook', 'ticketIsOpen'),
    withdrawLook: take('withdrawLook', 'ticketIsOpen'),
    evidenceAdded: take('evidenceAdded', 'ticketIsOpenOrSigned'),
    evidenceWithdrawn: take('evidenceWithdrawn', 'ticketIsOpen'),
    diaryOpened: take('diaryOpened', 'ticketIsOpen'),
    diaryClosed: take('diaryClosed'),
    occurrenceReported: take('occurrenceReported'),
    reportAnswered: take('reportAnswered'),
    withdrawReport: take('withdrawReport'),
    figuresChanged: take('figuresChanged'),
    reproductionRevised: take('reproductionRevised', 'reproductionStands'),
    sideRevised: take('sideRevised', 'sideIsKnown'),
    judgementRevised: take('judgementRevised', 'changeIsJudged'),
  },
  states: {
    baseline: {
      always: { guard: 'baselineComplete', target: 'reproduce' },
      on: {
        ...correcting,
        ...interruptedIn('baseline'),
        reviewAudit: take('reviewAudit'),
        recordAsFound: take('recordAsFound', 'noWatchRuns', 'noOpenChange', 'sideIsNotKnown'),
      },
    },
    reproduce: {
      on: {
        ...watching,
        ...enteringLate,
        ...replacing,
        ...interruptedIn('reproduce'),
        reviewAudit: take('reviewAudit'),
        recordAsFound: take('recordAsFound', 'noWatchRuns', 'noOpenChange', 'sideIsNotKnown'),
        startWatch: take('startReproduceWatch', 'noWatchRuns'),
        acceptReproduction: { ...take('acceptReproduction', 'noWatchRuns'), target: 'locateSide' },
        chooseRemedy: {
          ...take('settleNoFaultFound', 'noWatchRuns', 'noOpenChange', 'noCulpritIsNamed'),
          target: 'remedy',
        },
      },
    },
    locateSide: {
      always: { guard: 'reproductionFell', target: 'reproduce' },
      on: {
        ...watching,
        ...enteringLate,
        ...replacing,
        ...interruptedIn('locateSide'),
        reviewAudit: take('reviewAudit'),
        recordAsFound: take('recordAsFound', 'noWatchRuns', 'noOpenChange', 'sideIsNotKnown'),
        startWatch: take('startSideWatch', 'noWatchRuns'),
        concludeSide: take('concludeSide', 'noWatchRuns'),
        withdrawSide: take('withdrawSide', 'noWatchRuns', 'sideIsKnown'),
        beginSubstitution: {
          ...take('beginSubstitution', 'noWatchRuns', 'sideIsKnown'),
          target: 'substitute',
        },
        goOnWithoutSide: {
          ...take('goOnWithoutSide', 'noWatchRuns', 'sideIsNotKnown'),
          target: 'substitute',
        },
      },
    },
    substitute: {
      initial: 'ready',
      on: {
        ...correcting,
        declareChange: {
          ...take('declareChange', 'noOpenChange', 'noWatchRuns', 'sideIsKnownOrGivenUp'),
          target: '.declared',
        },
        nameCulprit: { ...take('nameCulprit', 'noOpenChange', 'noWatchRuns'), target: 'culpritFound' },
      },
      states: {
        ready: {
          always: { guard: 'sideFell', target: '#triage.locateSide' },
          on: {
            ...watching,
            ...replacing,
            ...interruptedIn('substitute.ready'),
            enterLateChange: [
              {
                ...take('enterOpenLateChange', 'noOpenChange', 'noWatchRuns', 'changeStaysOpen'),
                target: 'applied',
              },
              take('enterLateChange', 'noOpenChange', 'noWatchRuns'),
            ],
            startWatch: take('startConfirmWatch', 'noWatchRuns', 'noOpenChange'),
            locateSideAgain: { ...take('locateSideAgain', 'noWatchRuns'), target: '#triage.locateSide' },
          },
        },
        declared: {
          on: {
            ...interruptedIn('substitute.declared'),
            applyChange: { ...take('applyChange', 'changeIsDeclared'), target: 'applied' },
            withdrawChange: { ...take('withdrawChange', 'changeIsDeclared'), target: 'ready' },
          },
        },
        applied: {
          on: {
            ...interruptedIn('substitute.applied'),
            startWatch: { ...take('startRetestWatch', 'noWatchRuns', 'changeIsInPlace'), target: 'retest' },
            judgeRetest: { ...take('judgeRetest', 'changeIsInPlace', 'noWatchRuns'), target: 'judged' },
            leaveInPlace: take('leaveInPlace', 'changeIsInPlace', 'noWatchRuns'),
            endUnattended: take('endUnattended', 'changeIsInPlace', 'noWatchRuns'),
            restoreChange: { ...finishingChange.restoreChange, target: 'ready' },
          },
        },
        retest: {
          on: {
            ...watching,
            endWatch: { ...take('endWatch', 'watchRuns'), target: 'applied' },
          },
        },
        judged: {
          always: { guard: 'judgementFell', target: 'applied' },
          on: {
            ...interruptedIn('substitute.judged'),
            startWatch: { ...take('startRetestWatch', 'noWatchRuns', 'changeIsInPlace'), target: 'retest' },
            judgeRetest: take('judgeRetest', 'changeIsInPlace', 'noWatchRuns'),
            leaveInPlace: { ...take('leaveInPlace', 'changeIsInPlace', 'noWatchRuns'), target: 'applied' },
            restoreChange: { ...finishingChange.restoreChange, target: 'ready' },
            keepChange: [
              {
                ...take(
                  'keepOneOfTwo',
                  'changeIsInPlace',
                  'changeMayStay',
                  'noWatchRuns',
                  'changeIsOneOfTwo',
                ),
                target: '#triage.reproduce',
              },
              { ...finishingChange.keepChange, target: 'ready' },
            ],
          },
        },
      },
    },
    culpritFound: {
      on: {
        ...correcting,
        ...culpritFalls,
        ...interruptedIn('culpritFound'),
        ...finishingChange,
        withdrawCulprit: { ...take('withdrawCulprit', 'culpritIsNamed'), target: 'resuming' },
        chooseRemedy: { ...take('chooseRemedy', 'noOpenChange', 'culpritIsNamed'), target: 'remedy' },
      },
    },
    remedy: {
      on: {
        ...correcting,
        ...remedyFalls,
        ...interruptedIn('remedy'),
        finishRemedy: { ...take('finishRemedy', 'noOpenChange', 'remedyIsSettled'), target: 'verify' },
        ...withdrawingRemedy,
      },
    },
    verify: {
      on: {
        ...watching,
        ...remedyFalls,
        ...interruptedIn('verify'),
        startWatch: take('startVerifyWatch', 'noWatchRuns'),
        checkBeforeLeaving: take('checkBeforeLeaving', 'noWatchRuns'),
        ...withdrawingRemedy,
        faultCameBack: { ...take('faultCameBack', 'noWatchRuns'), target: 'baseline' },
        close: { ...take('close', 'noOpenChange', 'noWatchRuns', 'remedyIsSettled'), target: 'closed' },
      },
    },
    closed: {
      on: { reopen: { ...take('reopen'), target: 'baseline' }, recordFollowUp: take('recordFollowUp') },
    },
    waiting: {
      on: {
        waitFor: take('waitFor'),
        resumeWork: { ...take('resumeWork'), target: 'resuming' },
      },
    },
    escalated: {
      initial: 'waiting',
      states: {
        waiting: {
          on: {
            takeCase: { ...take('takeCase'), target: 'underReview' },
            resubmit: take('resubmit'),
            recall: { ...take('recall'), target: '#triage.resuming' },
          },
        },
        underReview: {
          on: { ...deciding, askForMore: { ...take('askForMore'), target: 'moreRequested' } },
        },
        moreRequested: {
          on: {
            ...deciding,
            askForMore: take('askForMore'),
            resubmit: { ...take('resubmit'), target: 'underReview' },
          },
        },
      },
    },
    /** Never rested in: work goes on where the record says. */
    resuming: {
      always: workingStates.map((state) => ({
        guard: { type: 'resumesAt' as const, params: state },
        actions: 'forgetWhereToResume' as const,
        target: `#triage.${state}`,
      })),
    },
  },
});

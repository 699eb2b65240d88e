import { assign, setup } from 'xstate';
import type { TriageRecord, WorkingState } from '../../shared/contract/triage.ts';
import { workingStates } from '../../shared/contract/triage-names.ts';
import type { TriageEvent } from './events.ts';
import { type Opening, openingRecord } from './opening.ts';
import { isBaselineComplete } from './record.ts';
import { type RuleName, rules } from './rules/index.ts';
import { causeOf } from './rules/rule.ts';

/** Goes up whenever a stored log could replay to another snapshot; snapshots and events name it. */
export const MACHINE_VERSION = 1;

type Moment = { context: TriageRecord; event: TriageEvent };
function tableOf<Name extends string, Made>(
  names: readonly Name[],
  make: (name: Name) => Made,
): Record<Name, Made> {
  return Object.fromEntries(names.map((name) => [name, make(name)])) as Record<Name, Made>;
}
const ruleNames = Object.keys(rules) as RuleName[];
const resumesAt = <State extends WorkingState>(state: State) => `resumesAt ${state}` as const;
const comeBackTo = <State extends WorkingState>(state: State) => `comeBackTo ${state}` as const;

const changeRecord = (change: (moment: Moment) => Partial<TriageRecord>) =>
  assign<TriageRecord, TriageEvent, undefined, TriageEvent, never>(change);

const triage = setup({
  types: { context: {} as TriageRecord, events: {} as TriageEvent, input: {} as Opening },
  guards: {
    ...tableOf(
      ruleNames,
      (name) =>
        ({ context, event }: Moment) =>
          causeOf(rules[name], context, event) === null,
    ),
    ...tableOf(workingStates.map(resumesAt), (name) => ({ context }: Moment) => {
      return context.resumeAt !== null && resumesAt(context.resumeAt) === name;
    }),
    baselineComplete: ({ context }: Moment) => isBaselineComplete(context),
  },
  actions: {
    ...tableOf(ruleNames, (name) => changeRecord(({ context, event }) => rules[name].apply(context, event))),
    ...tableOf(workingStates.map(comeBackTo), (name) => {
      const resumeAt = workingStates.find((state) => comeBackTo(state) === name) ?? null;
      return changeRecord(() => ({ resumeAt }));
    }),
    forgetWhereToResume: changeRecord(() => ({ resumeAt: null })),
  },
});

/** What a rule allows, happens by that rule; without a target the ticket stays where it is. */
const take = <Name extends RuleName>(name: Name) => ({ guard: name, actions: name });
const escalateFrom = (state: WorkingState) => ({
  escalate: {
    guard: 'escalate' as const,
    actions: ['escalate' as const, comeBackTo(state)],
    target: '#triage.escalated',
  },
});

/** What can be done while a watch runs, or about what a watch has seen. */
const watching = {
  recordOccurrence: take('recordOccurrence'),
  confirmOccurrence: take('confirmOccurrence'),
  recordTry: take('recordTry'),
  endWatch: take('endWatch'),
  withdrawOccurrence: take('withdrawOccurrence'),
};
/** How an open change ends, in a state that a change can be open in. */
const finishingChange = {
  restoreChange: take('restoreChange'),
  keepChange: take('keepChange'),
  withdrawChange: take('withdrawChange'),
};
/** What second line decides once somebody there has the case. */
const deciding = {
  takeCase: take('takeCase'),
  directStep: { ...take('directStep'), target: '#triage.resuming' },
  acceptCase: { ...take('acceptCase'), target: '#triage.culpritFound' },
  handBack: { ...take('handBack'), target: '#triage.resuming' },
};

/**
 * The way of a ticket from the call to its end. Pure: events carry their time and what they need of the chain; the
 * context is the triage record and nothing else. A guard and the sentence that explains a refusal are one rule.
 */
export const triageMachine = triage.createMachine({
  id: 'triage',
  context: ({ input }) => openingRecord(input),
  initial: 'baseline',
  on: {
    note: take('note'),
    amendIntake: take('amendIntake'),
    answerWhatChanged: take('answerWhatChanged'),
    answerRequest: take('answerRequest'),
    evidenceAdded: take('evidenceAdded'),
    evidenceWithdrawn: take('evidenceWithdrawn'),
  },
  states: {
    baseline: {
      always: { guard: 'baselineComplete', target: 'reproduce' },
      on: {
        ...escalateFrom('baseline'),
        reviewAudit: take('reviewAudit'),
        recordAsFound: take('recordAsFound'),
      },
    },
    reproduce: {
      on: {
        ...watching,
        ...escalateFrom('reproduce'),
        reviewAudit: take('reviewAudit'),
        recordAsFound: take('recordAsFound'),
        startWatch: take('startReproduceWatch'),
        acceptReproduction: { ...take('acceptReproduction'), target: 'locateSide' },
        chooseRemedy: { ...take('settleNoFaultFound'), target: 'remedy' },
      },
    },
    locateSide: {
      on: {
        ...watching,
        ...escalateFrom('locateSide'),
        reviewAudit: take('reviewAudit'),
        recordAsFound: take('recordAsFound'),
        startWatch: take('startSideWatch'),
        withdrawOccurrence: [
          { ...take('withdrawReproduction'), target: 'reproduce' },
          take('withdrawOccurrence'),
        ],
        concludeSide: take('concludeSide'),
        withdrawSide: take('withdrawSide'),
        beginSubstitution: { ...take('beginSubstitution'), target: 'substitute' },
      },
    },
    substitute: {
      initial: 'ready',
      on: {
        confirmOccurrence: take('confirmOccurrence'),
        withdrawOccurrence: take('withdrawOccurrence'),
        declareChange: { ...take('declareChange'), target: '.declared' },
        nameCulprit: { ...take('nameCulprit'), target: 'culpritFound' },
      },
      states: {
        ready: {
          on: {
            ...watching,
            ...escalateFrom('substitute.ready'),
            startWatch: take('startConfirmWatch'),
            locateSideAgain: { ...take('locateSideAgain'), target: '#triage.locateSide' },
          },
        },
        declared: {
          on: {
            ...escalateFrom('substitute.declared'),
            applyChange: { ...take('applyChange'), target: 'applied' },
            withdrawChange: { ...take('withdrawChange'), target: 'ready' },
          },
        },
        applied: {
          on: {
            ...escalateFrom('substitute.applied'),
            startWatch: { ...take('startRetestWatch'), target: 'retest' },
            judgeRetest: { ...take('judgeRetest'), target: 'judged' },
            restoreChange: { ...take('restoreChange'), target: 'ready' },
          },
        },
        retest: {
          on: {
            ...watching,
            endWatch: { ...take('endWatch'), target: 'applied' },
          },
        },
        judged: {
          on: {
            ...escalateFrom('substitute.judged'),
            startWatch: { ...take('startRetestWatch'), target: 'retest' },
            judgeRetest: take('judgeRetest'),
            restoreChange: { ...take('restoreChange'), target: 'ready' },
            keepChange: { ...take('keepChange'), target: 'ready' },
          },
        },
      },
    },
    culpritFound: {
      on: {
        ...escalateFrom('culpritFound'),
        ...finishingChange,
        withdrawCulprit: { ...take('withdrawCulprit'), target: 'resuming' },
        chooseRemedy: { ...take('chooseRemedy'), target: 'remedy' },
      },
    },
    remedy: {
      on: {
        ...escalateFrom('remedy'),
        finishRemedy: { ...take('finishRemedy'), target: 'verify' },
        withdrawRemedy: [
          { ...take('withdrawNoFaultFound'), target: 'reproduce' },
          { ...take('withdrawRemedy'), target: 'culpritFound' },
        ],
      },
    },
    verify: {
      on: {
        ...watching,
        ...escalateFrom('verify'),
        startWatch: take('startVerifyWatch'),
        withdrawRemedy: [
          { ...take('withdrawNoFaultFound'), target: 'reproduce' },
          { ...take('withdrawRemedy'), target: 'culpritFound' },
        ],
        faultCameBack: { ...take('faultCameBack'), target: 'baseline' },
        close: { ...take('close'), target: 'closed' },
      },
    },
    closed: {
      on: { reopen: { ...take('reopen'), target: 'baseline' } },
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
        guard: resumesAt(state),
        actions: 'forgetWhereToResume' as const,
        target: `#triage.${state}`,
      })),
    },
  },
});

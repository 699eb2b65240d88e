import * as baseline from './baseline.ts';
import * as changes from './changes.ts';
import * as choices from './choices.ts';
import * as corrections from './corrections.ts';
import * as culprit from './culprit.ts';
import * as escalation from './escalation.ts';
import * as evidence from './evidence.ts';
import * as lateChanges from './late-changes.ts';
import * as leaving from './leaving.ts';
import * as looks from './looks.ts';
import * as occurrences from './occurrences.ts';
import * as remedy from './remedy.ts';
import * as reports from './reports.ts';
import type { Rule } from './rule.ts';
import * as secondLine from './second-line.ts';
import * as sides from './sides.ts';
import * as unattended from './unattended.ts';
import * as waiting from './waiting.ts';
import * as watches from './watches.ts';

/** Every rule by its name; the machine’s actions bear the same names. */
export const rules = {
  reviewAudit: baseline.reviewAudit,
  answerWhatChanged: baseline.answerWhatChanged,
  recordAsFound: baseline.recordAsFound,
  note: baseline.note,
  amendIntake: baseline.amendIntake,

  startReproduceWatch: watches.startReproduceWatch,
  startSideWatch: watches.startSideWatch,
  startRetestWatch: watches.startRetestWatch,
  startConfirmWatch: watches.startConfirmWatch,
  startVerifyWatch: watches.startVerifyWatch,
  recordOccurrence: watches.recordOccurrence,
  recordTry: watches.recordTry,
  endWatch: watches.endWatch,
  acceptReproduction: watches.acceptReproduction,
  confirmOccurrence: occurrences.confirmOccurrence,
  answerLogged: occurrences.answerLogged,
  withdrawOccurrence: corrections.withdrawOccurrence,
  correctOccurrence: corrections.correctOccurrence,
  voidWatch: corrections.voidWatch,

  concludeSide: sides.concludeSide,
  withdrawSide: sides.withdrawSide,
  beginSubstitution: sides.beginSubstitution,
  locateSideAgain: sides.locateSideAgain,
  goOnWithoutSide: sides.goOnWithoutSide,

  recordLook: looks.recordLook,
  withdrawLook: looks.withdrawLook,

  declareChange: changes.declareChange,
  enterLateChange: lateChanges.enterLateChange,
  enterOpenLateChange: lateChanges.enterOpenLateChange,
  withdrawChange: changes.withdrawChange,
  applyChange: changes.applyChange,
  judgeRetest: changes.judgeRetest,
  leaveInPlace: unattended.leaveInPlace,
  endUnattended: unattended.endUnattended,
  restoreChange: changes.restoreChange,
  keepChange: changes.keepChange,
  keepOneOfTwo: changes.keepOneOfTwo,

  nameCulprit: culprit.nameCulprit,
  withdrawCulprit: culprit.withdrawCulprit,
  settleNoFaultFound: remedy.settleNoFaultFound,
  chooseRemedy: remedy.chooseRemedy,
  withdrawNoFaultFound: remedy.withdrawNoFaultFound,
  withdrawRemedy: remedy.withdrawRemedy,
  finishRemedy: remedy.finishRemedy,
  faultCameBack: remedy.faultCameBack,
  close: remedy.close,
  reopen: remedy.reopen,

  recordChoice: choices.recordChoice,
  replaceOnSuspicion: choices.replaceOnSuspicion,
  recordFollowUp: choices.recordFollowUp,
  checkBeforeLeaving: leaving.checkBeforeLeaving,

  waitFor: waiting.waitFor,
  resumeWork: waiting.resumeWork,

  escalate: escalation.escalate,
  answerRequest: escalation.answerRequest,
  resubmit: escalation.resubmit,
  recall: escalation.recall,
  takeCase: secondLine.takeCase,
  askForMore: secondLine.askForMore,
  directStep: secondLine.directStep,
  acceptCase: secondLine.acceptCase,
  handBack: secondLine.handBack,

  evidenceAdded: evidence.evidenceAdded,
  evidenceWithdrawn: evidence.evidenceWithdrawn,

  diaryOpened: reports.diaryOpened,
  diaryClosed: reports.diaryClosed,
  occurrenceReported: reports.occurrenceReported,
  reportAnswered: reports.reportAnswered,
  withdrawReport: reports.withdrawReport,
} satisfies Record<string, Rule>;
export type RuleName = keyof typeof rules;
export const isRuleName = (name: unknown): name is RuleName => typeof name === 'string' && name in rules;

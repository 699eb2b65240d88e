import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import { type MemberRole, memberRoles } from '../../../shared/contract/people-names.ts';

const onTheTicket = ['dispatcher', 'technician', 'admin'] as const;
const onSite = ['technician', 'admin'] as const;
const secondLine = ['support'] as const;

/** Who may send which command. An admin may do what technicians and dispatchers do; only support decides a case. */
export const commandRoles: Record<TicketCommandType, readonly MemberRole[]> = {
  note: memberRoles,
  amendIntake: onTheTicket,
  answerWhatChanged: onTheTicket,
  withdrawReport: onTheTicket,
  reopen: onTheTicket,
  waitFor: onTheTicket,
  resumeWork: onTheTicket,

  reviewAudit: onSite,
  recordAsFound: onSite,
  startWatch: onSite,
  recordOccurrence: onSite,
  confirmOccurrence: onSite,
  recordTry: onSite,
  withdrawOccurrence: onSite,
  correctOccurrence: onSite,
  voidWatch: onSite,
  endWatch: onSite,
  acceptReproduction: onSite,
  concludeSide: onSite,
  withdrawSide: onSite,
  beginSubstitution: onSite,
  goOnWithoutSide: onSite,
  recordLook: onSite,
  withdrawLook: onSite,
  declareChange: onSite,
  enterLateChange: onSite,
  withdrawChange: onSite,
  applyChange: onSite,
  judgeRetest: onSite,
  leaveInPlace: onSite,
  endUnattended: onSite,
  restoreChange: onSite,
  keepChange: onSite,
  locateSideAgain: onSite,
  nameCulprit: onSite,
  withdrawCulprit: onSite,
  chooseRemedy: onSite,
  withdrawRemedy: onSite,
  finishRemedy: onSite,
  faultCameBack: onSite,
  close: onSite,
  escalate: onSite,
  answerRequest: onSite,
  resubmit: onSite,
  recall: onSite,

  takeCase: secondLine,
  askForMore: secondLine,
  directStep: secondLine,
  acceptCase: secondLine,
  handBack: secondLine,
};

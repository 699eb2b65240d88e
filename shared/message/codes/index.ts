import { auditCableCodes } from './audit-cables.ts';
import { auditDeviceCodes } from './audit-devices.ts';
import { auditPortCodes } from './audit-ports.ts';
import { cautionCodes } from './cautions.ts';
import { chainChangeCodes } from './chain-changes.ts';
import { chainFaultCodes } from './chain-faults.ts';
import { changePlacesCodes } from './change-places.ts';
import { changeCodes, needCodes } from './changes.ts';
import { completenessCodes } from './completeness.ts';
import { contentProtectionCodes } from './content-protection.ts';
import { edidCodes } from './edid.ts';
import { edidProblemCodes } from './edid-problems.ts';
import { fieldCodes } from './fields.ts';
import { figureCodes } from './figures.ts';
import { fileCodes } from './files.ts';
import { firmwareCodes } from './firmware.ts';
import { kitCodes } from './kit.ts';
import { linkBudgetCodes } from './link-budget.ts';
import { logCheckCodes } from './log-check.ts';
import { logCodes } from './logs.ts';
import { lookCodes } from './looks.ts';
import { packetNewsCodes } from './packet-news.ts';
import { patternCodes } from './patterns.ts';
import { phoneCodes } from './phone.ts';
import { placeCodes } from './places.ts';
import { planCodes } from './plan.ts';
import { powerCodes } from './power.ts';
import { problemTitleCodes } from './problem-titles.ts';
import { recordCodes } from './records.ts';
import { refusalsCodes } from './refusals.ts';
import { requestCodes } from './requests.ts';
import { retestCodes } from './retest.ts';
import { secondFactorCodes } from './second-factor.ts';
import { sourceCodes } from './sources.ts';
import { stepCodes } from './steps.ts';
import { suspectCodes } from './suspects.ts';
import { ticketLogCodes } from './ticket-log.ts';
import { writtenCodes } from './written.ts';

/** Every code with its values. A code that an event holds is never renamed or removed; see tests/message. */
export const codes = {
  ...auditCableCodes,
  ...auditDeviceCodes,
  ...auditPortCodes,
  ...cautionCodes,
  ...chainChangeCodes,
  ...chainFaultCodes,
  ...changePlacesCodes,
  ...changeCodes,
  ...needCodes,
  ...completenessCodes,
  ...contentProtectionCodes,
  ...edidCodes,
  ...edidProblemCodes,
  ...fieldCodes,
  ...figureCodes,
  ...fileCodes,
  ...firmwareCodes,
  ...kitCodes,
  ...linkBudgetCodes,
  ...logCheckCodes,
  ...logCodes,
  ...lookCodes,
  ...packetNewsCodes,
  ...patternCodes,
  ...phoneCodes,
  ...placeCodes,
  ...planCodes,
  ...powerCodes,
  ...problemTitleCodes,
  ...recordCodes,
  ...refusalsCodes,
  ...requestCodes,
  ...retestCodes,
  ...secondFactorCodes,
  ...sourceCodes,
  ...stepCodes,
  ...suspectCodes,
  ...ticketLogCodes,
  ...writtenCodes,
};

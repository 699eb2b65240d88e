import type { Language } from '../sentences.ts';
import { auditCablesDe } from './audit-cables.ts';
import { auditDevicesDe } from './audit-devices.ts';
import { auditPortsDe } from './audit-ports.ts';
import { cautionsDe } from './cautions.ts';
import { chainChangesDe } from './chain-changes.ts';
import { chainFaultsDe } from './chain-faults.ts';
import { changePlacesDe } from './change-places.ts';
import { changesDe, needsDe } from './changes.ts';
import { completenessDe } from './completeness.ts';
import { contentProtectionDe } from './content-protection.ts';
import { edidDe } from './edid.ts';
import { edidProblemsDe } from './edid-problems.ts';
import { fieldsDe } from './fields.ts';
import { figuresDe } from './figures.ts';
import { filesDe } from './files.ts';
import { firmwareDe } from './firmware.ts';
import { kitDe } from './kit.ts';
import { linkBudgetDe } from './link-budget.ts';
import { logCheckDe } from './log-check.ts';
import { logsDe } from './logs.ts';
import { looksDe } from './looks.ts';
import { packetNewsDe } from './packet-news.ts';
import { patternsDe } from './patterns.ts';
import { phoneDe } from './phone.ts';
import { placesDe } from './places.ts';
import { planDe } from './plan.ts';
import { powerDe } from './power.ts';
import { problemTitlesDe } from './problem-titles.ts';
import { recordsDe } from './records.ts';
import { refusalsDe } from './refusals.ts';
import { requestsDe } from './requests.ts';
import { retestDe } from './retest.ts';
import { germanSay } from './say.ts';
import { secondFactorDe } from './second-factor.ts';
import { sourcesDe } from './sources.ts';
import { stepsDe } from './steps.ts';
import { suspectsDe } from './suspects.ts';
import { ticketLogDe } from './ticket-log.ts';
import { writtenDe } from './written.ts';

export { deTerms } from './terms.ts';

export const german: Language = {
  tag: 'de',
  quotes: ['„', '“'],
  sentences: {
    ...auditCablesDe,
    ...auditDevicesDe,
    ...auditPortsDe,
    ...cautionsDe,
    ...chainChangesDe,
    ...chainFaultsDe,
    ...changePlacesDe,
    ...changesDe,
    ...needsDe,
    ...completenessDe,
    ...contentProtectionDe,
    ...edidDe,
    ...edidProblemsDe,
    ...fieldsDe,
    ...figuresDe,
    ...filesDe,
    ...firmwareDe,
    ...kitDe,
    ...linkBudgetDe,
    ...logCheckDe,
    ...logsDe,
    ...looksDe,
    ...packetNewsDe,
    ...patternsDe,
    ...phoneDe,
    ...placesDe,
    ...planDe,
    ...powerDe,
    ...problemTitlesDe,
    ...recordsDe,
    ...refusalsDe,
    ...requestsDe,
    ...retestDe,
    ...secondFactorDe,
    ...sourcesDe,
    ...stepsDe,
    ...suspectsDe,
    ...ticketLogDe,
    ...writtenDe,
  },
  say: (zone) => germanSay(german, zone),
};

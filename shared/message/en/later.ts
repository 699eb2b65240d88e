import { auditCablesEn } from './audit-cables.ts';
import { auditDevicesEn } from './audit-devices.ts';
import { auditPortsEn } from './audit-ports.ts';
import { cautionsEn } from './cautions.ts';
import { chainChangesEn } from './chain-changes.ts';
import { chainFaultsEn } from './chain-faults.ts';
import { changePlacesEn } from './change-places.ts';
import { changesEn, needsEn } from './changes.ts';
import { contentProtectionEn } from './content-protection.ts';
import { edidEn } from './edid.ts';
import { edidProblemsEn } from './edid-problems.ts';
import { fieldsEn } from './fields.ts';
import { figuresEn } from './figures.ts';
import { filesEn } from './files.ts';
import { firmwareEn } from './firmware.ts';
import { linkBudgetEn } from './link-budget.ts';
import { logCheckEn } from './log-check.ts';
import { logsEn } from './logs.ts';
import { looksEn } from './looks.ts';
import { packetNewsEn } from './packet-news.ts';
import { phoneEn } from './phone.ts';
import { placesEn } from './places.ts';
import { planEn } from './plan.ts';
import { powerEn } from './power.ts';
import { recordsEn } from './records.ts';
import { refusalsEn } from './refusals.ts';
import { retestEn } from './retest.ts';
import { secondFactorEn } from './second-factor.ts';
import { sourcesEn } from './sources.ts';
import { stepsEn } from './steps.ts';
import { suspectsEn } from './suspects.ts';
import { ticketLogEn } from './ticket-log.ts';

/** What no first screen of a visit says: to a phone it comes after its first load. */
export const laterEn = {
  ...auditCablesEn,
  ...auditDevicesEn,
  ...auditPortsEn,
  ...cautionsEn,
  ...chainChangesEn,
  ...chainFaultsEn,
  ...changePlacesEn,
  ...changesEn,
  ...needsEn,
  ...contentProtectionEn,
  ...edidEn,
  ...edidProblemsEn,
  ...fieldsEn,
  ...figuresEn,
  ...filesEn,
  ...firmwareEn,
  ...linkBudgetEn,
  ...logCheckEn,
  ...logsEn,
  ...looksEn,
  ...packetNewsEn,
  ...phoneEn,
  ...placesEn,
  ...planEn,
  ...powerEn,
  ...recordsEn,
  ...refusalsEn,
  ...retestEn,
  ...secondFactorEn,
  ...sourcesEn,
  ...stepsEn,
  ...suspectsEn,
  ...ticketLogEn,
};

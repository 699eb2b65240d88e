import { z } from 'zod';
import { defaultAssumptions } from '../signal/link-budget/assumptions.ts';
import { defaultPowerAssumptions } from '../signal/power.ts';
import { linkCategories } from './chain.ts';
import { recognitionRow } from './log-findings.ts';
import { id, instant, line, memberRole } from './primitives.ts';

export const handle = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{1,39}$/, 'small letters, digits and dashes, 2 to 40');
export const email = z.email().max(200).toLowerCase();
/** NIST SP 800-63B section 5.1.1.2: length over composition rules. */
export const newPassword = z.string().min(10).max(200);

export const signIn = z.object({
  organisation: z.string().max(60),
  email: z.string().max(200),
  password: z.string().max(200),
});
export const member = z.object({
  id,
  name: line,
  email,
  role: memberRole,
  active: z.boolean(),
  version: z.int(),
});
export type Member = z.infer<typeof member>;
export const tokens = z.object({
  accessToken: z.string(),
  expiresInS: z.int(),
  refreshToken: z.string(),
  member,
  organisation: z.object({ id, handle: z.string(), name: z.string() }),
});
export type Tokens = z.infer<typeof tokens>;
export const refresh = z.object({ refreshToken: z.string().min(20).max(500) });
export const me = z.object({
  member,
  organisation: z.object({ id, handle: z.string(), name: z.string() }),
  /** What a packet is granted to; tell it to the organisation that wants to show you a case. */
  memberAddress: id,
});

export const newMember = z.object({ name: line, email, role: memberRole, password: newPassword });
export const memberUpdate = z.object({ name: line, role: memberRole, active: z.boolean() });
export const passwordReset = z.object({ password: newPassword });
export const passwordChange = z.object({ current: z.string().max(200), password: newPassword });

export const firmwareLevel = z.object({
  id,
  model: line,
  minimum: line,
  note: z.string().max(500),
  version: z.int(),
  updatedAt: instant,
});
export type FirmwareLevel = z.infer<typeof firmwareLevel>;
export const firmwareLevelInput = z.object({
  model: line,
  minimum: line,
  note: z.string().max(500).default(''),
});

const share = z.number().min(0.1).max(1);
const reachM = z.number().min(0).max(1000);
const reaches = defaultAssumptions.passiveCopperReachM;
const budgetSettings = z.object({
  passiveCopperReachM: z
    .object({
      standard: reachM.default(reaches.standard),
      highSpeed: reachM.default(reaches.highSpeed),
      premiumHighSpeed: reachM.default(reaches.premiumHighSpeed),
      ultraHighSpeed: reachM.default(reaches.ultraHighSpeed),
      unknown: reachM.default(reaches.unknown),
    })
    .prefault({}),
  activeCopperReach: z.number().min(1).max(20).default(defaultAssumptions.activeCopperReach),
  activeOpticalReachM: reachM.default(defaultAssumptions.activeOpticalReachM),
  uncertified: share.default(defaultAssumptions.uncertified),
  siteFittedEnds: share.default(defaultAssumptions.siteFittedEnds),
  unknownCategory: z.enum(linkCategories).exclude(['unknown']).default(defaultAssumptions.unknownCategory),
  extenderTmdsMHz: z.number().min(25).max(600).default(defaultAssumptions.extenderTmdsMHz),
});
const drawMa = z.number().min(0).max(5000);
const cableDraws = z.object({
  passiveCopper: drawMa.default(defaultPowerAssumptions.passiveCopper),
  activeCopper: drawMa.default(defaultPowerAssumptions.activeCopper),
  activeOptical: drawMa.default(defaultPowerAssumptions.activeOptical),
  twistedPairExtender: drawMa.default(defaultPowerAssumptions.twistedPairExtender),
});

/** Numbers that we made up (`assumed`) and an organisation may set for itself. */
export const organisationSettings = z.object({
  /** Chance taken of calling a fault cleared that is still there; common practice in testing, 5 %. */
  risk: z.number().min(0.001).max(0.5).default(0.05),
  /** Days in which a closed ticket may be reopened; assumed. */
  reopenDays: z.int().min(0).max(3650).default(30),
  /** A cable shorter than this is a finding, metres; common practice, no source. */
  shortestCableM: z.number().min(0).max(10).default(1.8),
  /** A copper cable longer than this is a finding, metres; common practice, no source. */
  longestCopperM: z.number().min(1).max(100).default(7.6),
  /** What the link budget takes for granted, see shared/signal/link-budget/assumptions.ts. */
  budget: budgetSettings.prefault({}),
  /** What a cable's electronics draw from the 5 V line where its record does not say, mA. */
  cableDrawMa: cableDraws.prefault({}),
  /** Overrides of the fault model's figures by path, see GET /fault-model. */
  faultModel: z.record(z.string().max(200), z.number()).default({}),
  /** What the organisation's own devices write in their logs; these rows come before the built-in ones. */
  recognition: z.array(recognitionRow).max(200).default([]),
  /** The time zone that sites of this organisation are in, unless a site says otherwise. */
  timeZone: z.string().max(60).default('UTC'),
});
export type OrganisationSettings = z.infer<typeof organisationSettings>;
export const organisation = z.object({
  id,
  handle: z.string(),
  name: line,
  settings: organisationSettings,
  version: z.int(),
});
export const organisationUpdate = z.object({ name: line, settings: organisationSettings });

/** Figures of the fault model: `own` is the organisation's, null where it uses the built-in one. */
export const faultModelReply = z.object({
  items: z.array(
    z.object({ path: z.string(), figure: z.number(), origin: z.string(), own: z.number().nullable() }),
  ),
});

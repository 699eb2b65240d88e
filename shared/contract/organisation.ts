import { z } from 'zod';
import { knownCategories } from './chain-names.ts';
import { organisationDefaults } from './defaults.ts';
import { longest, mostOwnChanges, ranges } from './limits.ts';
import { recognitionRow } from './log-findings.ts';
import { misfit } from './misfits.ts';
import { ownChange } from './own-change.ts';
import { id, instant, line } from './primitives.ts';

export const handle = z
  .string()
  .min(2)
  .max(40)
  .regex(/^[a-z0-9][a-z0-9-]*$/, misfit('fieldNotHandle'));

export const firmwareLevel = z.object({
  id,
  model: line,
  minimum: line,
  note: z.string().max(longest.note),
  version: z.int(),
  updatedAt: instant,
});
export type FirmwareLevel = z.infer<typeof firmwareLevel>;
export const firmwareLevelInput = z.object({
  model: line,
  minimum: line,
  note: z.string().max(longest.note).default(''),
});

const share = z.number().min(ranges.share.min).max(ranges.share.max);
const reachM = z.number().min(ranges.reachM.min).max(ranges.reachM.max);
const { budget, cableDrawMa } = organisationDefaults;
const reaches = budget.passiveCopperReachM;
const budgetSettings = z.object({
  passiveCopperReachM: z
    .object({
      standard: reachM.default(reaches.standard),
      highSpeed: reachM.default(reaches.highSpeed),
      premiumHighSpeed: reachM.default(reaches.premiumHighSpeed),
      ultraHighSpeed: reachM.default(reaches.ultraHighSpeed),
    })
    .prefault({}),
  activeCopperReach: z
    .number()
    .min(ranges.activeCopperReach.min)
    .max(ranges.activeCopperReach.max)
    .default(budget.activeCopperReach),
  activeOpticalReachM: reachM.default(budget.activeOpticalReachM),
  farthestReach: z
    .number()
    .min(ranges.farthestReach.min)
    .max(ranges.farthestReach.max)
    .default(budget.farthestReach),
  uncertified: share.default(budget.uncertified),
  siteFittedEnds: share.default(budget.siteFittedEnds),
  perCoupler: share.default(budget.perCoupler),
  unknownCategory: z.enum(knownCategories).default(budget.unknownCategory),
  extenderTmdsMHz: z.number().min(ranges.tmdsMHz.min).max(ranges.tmdsMHz.max).default(budget.extenderTmdsMHz),
  twistedPairReachM: reachM.default(budget.twistedPairReachM),
});
const drawMa = z.number().min(ranges.drawMa.min).max(ranges.drawMa.max);
const cableDraws = z.object({
  passiveCopper: drawMa.default(cableDrawMa.passiveCopper),
  activeCopper: drawMa.default(cableDrawMa.activeCopper),
  activeOptical: drawMa.default(cableDrawMa.activeOptical),
  twistedPairExtender: drawMa.default(cableDrawMa.twistedPairExtender),
});

/** Numbers that an organisation may set for itself; defaults.ts says where the ones come from that it doesn't set. */
export const organisationSettings = z.object({
  /** Chance taken of calling a fault cleared that is still there. */
  risk: z.number().min(ranges.risk.min).max(ranges.risk.max).default(organisationDefaults.risk),
  /** Days in which a closed ticket may be reopened. */
  reopenDays: z
    .int()
    .min(ranges.reopenDays.min)
    .max(ranges.reopenDays.max)
    .default(organisationDefaults.reopenDays),
  /** Days for which the audit log keeps an entry. */
  auditLogDays: z
    .int()
    .min(ranges.auditLogDays.min)
    .max(ranges.auditLogDays.max)
    .default(organisationDefaults.auditLogDays),
  /** A cable shorter than this is a finding, metres. */
  shortestCableM: z
    .number()
    .min(ranges.shortestCableM.min)
    .max(ranges.shortestCableM.max)
    .default(organisationDefaults.shortestCableM),
  /** What the link budget takes for granted, see shared/signal/link-budget/assumptions.ts. */
  budget: budgetSettings.prefault({}),
  /** What a cable's electronics draw from the 5 V line where its record does not say, mA. */
  cableDrawMa: cableDraws.prefault({}),
  /** Overrides of the fault model's figures by path, see GET /fault-model. */
  faultModel: z.record(z.string().max(200), z.number()).default({}),
  /** Kinds of change that the organisation adds to the catalogue. */
  ownChanges: z.array(ownChange).max(mostOwnChanges).default([]),
  /** What the organisation's own devices write in their logs; these rows come before the built-in ones. */
  recognition: z.array(recognitionRow).max(200).default([]),
  /** Whether admins have to show more than a password. */
  adminsNeedSecondFactor: z.boolean().default(false),
  /** The time zone that sites of this organisation are in, unless a site says otherwise. */
  timeZone: z.string().max(60).default(organisationDefaults.timeZone),
});
export type OrganisationSettings = z.infer<typeof organisationSettings>;
export const organisation = z.object({
  id,
  handle: z.string(),
  name: line,
  settings: organisationSettings,
  version: z.int(),
});
export type Organisation = z.infer<typeof organisation>;
export const organisationUpdate = z.object({ name: line, settings: organisationSettings });

/** A figure of the fault model: `own` is the organisation's, null where it uses the built-in one. */
export const faultFigure = z.object({
  path: z.string(),
  figure: z.number(),
  origin: z.string(),
  own: z.number().nullable(),
});
export type FaultFigure = z.infer<typeof faultFigure>;

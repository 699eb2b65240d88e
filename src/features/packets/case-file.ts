import { checkLevels } from '../../../shared/chain/firmware-level.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import type { LanguageTag } from '../../../shared/contract/language-names.ts';
import type { CaseEvidence, CaseFile, CaseFirmware } from '../../../shared/contract/packet.ts';
import type { Site } from '../../../shared/contract/site.ts';
import type { Intake } from '../../../shared/contract/ticket.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { completeness, levelsReadUnattended, segmentOf } from '../../../state-machines/index.ts';
import { evidencePath } from '../evidence-record/index.ts';
import { packetNews } from './news.ts';

/** All that a case file is made of. Evidence and chain versions come oldest first. */
export type CaseInput = {
  readonly language: LanguageTag;
  readonly packet: {
    readonly id: string;
    readonly version: number;
    readonly at: string;
    readonly by: string;
  };
  readonly organisation: CaseFile['organisation'];
  readonly ticket: CaseFile['ticket'];
  readonly site: Pick<Site, 'id' | 'client' | 'hazards'> & { readonly timeZone: string };
  readonly intake: Intake;
  readonly record: TriageRecord;
  readonly chain: CaseFile['chain'];
  readonly prerequisites: CaseFile['prerequisites'];
  readonly minimumFirmware: readonly { readonly model: string; readonly minimum: string }[];
  readonly evidence: readonly EvidenceItem[];
  readonly logs: CaseFile['logs'];
  readonly believed: Pick<CaseFile, 'suspects' | 'earlierRoundsCount'>;
  readonly erased: CaseFile['erased'];
  readonly people: CaseFile['people'];
  /** The case file of the version before; null for the first. */
  readonly before: CaseFile | null;
};

/** Puts the case together as second line gets it, with what is new since the version before. */
export function caseFileOf(input: CaseInput): CaseFile {
  const { record, before } = input;
  const { reporter, ...intake } = input.intake;
  const escalation = record.escalations.find(({ version }) => version === input.packet.version);
  const file: Omit<CaseFile, 'news'> = {
    caseFileVersion: 2,
    language: input.language,
    packet: {
      id: input.packet.id,
      version: input.packet.version,
      createdAt: input.packet.at,
      createdBy: input.packet.by,
      question: escalation?.question ?? '',
      waivers: escalation?.waivers ?? [],
    },
    organisation: input.organisation,
    ticket: input.ticket,
    site: {
      id: input.site.id,
      client: input.site.client,
      hazards: input.site.hazards,
      timeZone: input.site.timeZone,
    },
    intake: { ...intake, reporterRelation: reporter.relation },
    chain: input.chain,
    prerequisites: input.prerequisites,
    segment: segmentIn(record),
    ...input.believed,
    firmware: firmwareOf(record.asFound?.chain ?? input.chain.now.chain, input),
    missing: completeness(record),
    evidence: input.evidence.map(inBag),
    people: input.people,
    logs: input.logs,
    erased: input.erased,
    triage: record,
  };
  return { ...file, news: before === null ? [] : packetNews(before, file) };
}

const inBag = (item: EvidenceItem, index: number): CaseEvidence => ({
  ...item,
  path: item.sha256 === null ? null : evidencePath(item, index + 1),
});

function segmentIn(record: TriageRecord): CaseFile['segment'] {
  const segment = segmentOf(record);
  if (segment === null) return null;
  const { deviceIds, linkIds, inputHalfIds, outputHalfIds } = segment;
  return { deviceIds, linkIds, inputHalfIds, outputHalfIds };
}

/** Every level that was read, oldest first: as evidence, and around a change that was left in between visits. */
function levelsRead({ evidence, record }: CaseInput) {
  const asEvidence = evidence.flatMap(({ id, reading, withdrawn, tie: { deviceId }, at, by }) =>
    reading?.kind === 'firmware' && withdrawn === null
      ? [{ deviceId, level: reading.level, at, by, evidenceId: id }]
      : [],
  );
  const around = levelsReadUnattended(record).map((read) => ({ ...read, evidenceId: null }));
  return [...asEvidence, ...around].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

function firmwareOf(chain: Chain, input: CaseInput): CaseFirmware[] {
  const readings = levelsRead(input);
  return chain.devices.map((device) => {
    const reading = readings.findLast(({ deviceId }) => deviceId === device.id);
    const level = reading?.level ?? device.firmware;
    const checks = checkLevels({ model: device.model, firmware: level }, input.minimumFirmware);
    const check = checks.find(({ result }) => result === 'below') ?? checks[0];
    return {
      deviceId: device.id,
      level,
      from: reading !== undefined ? 'reading' : level !== null ? 'description' : 'notKnown',
      readAt: reading?.at ?? null,
      readBy: reading?.by ?? null,
      evidenceId: reading?.evidenceId ?? null,
      minimum: check?.minimum ?? null,
      belowMinimum: check === undefined ? 'notKnown' : comparison[check.result],
    };
  });
}

const comparison = { below: 'yes', ok: 'no', unknown: 'notKnown' } as const;

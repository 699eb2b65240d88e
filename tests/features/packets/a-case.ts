import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { intake } from '../../../shared/contract/ticket.ts';
import type { TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/index.ts';
import { type CaseInput, caseFileOf } from '../../../src/features/packets/case-file.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { untoldPattern } from '../../support/untold-pattern.ts';

/*
 * A case for tests: drop-outs downstream of the processor, a temporary cable that cleared them, and the packet that
 * goes to second line with it. All of it invented.
 */

export const uuid = (n: number): string => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`;
export const technicianId = uuid(1);
export const supportId = uuid(2);
export const ticketId = uuid(10);

/** Minutes after ten o'clock on the day of the visit. */
export const at = (minutes: number): string =>
  new Date(Date.parse('2026-11-20T10:00:00.000Z') + minutes * 60_000).toISOString();
const by = technicianId;

const watch = (
  n: number,
  from: number,
  to: number,
  facts: Partial<Watch>,
  seen: readonly number[] = [],
): Watch => ({
  id: uuid(100 + n),
  round: 1,
  purpose: 'reproduce',
  mode: 'time',
  trigger: null,
  triggerKind: null,
  conditions: { sincePowerOnMin: null, asTold: null, content: null },
  plannedMin: 60,
  startedAt: at(from),
  endedAt: at(to),
  tries: 0,
  occurrences: seen.map((minute, index) => ({
    id: uuid(1000 + n * 10 + index),
    at: at(minute),
    corrections: [],
    durationS: 2,
    menu: null,
    description: 'Black for two seconds',
    withdrawn: null,
  })),
  menuDeviceId: null,
  changeId: null,
  by,
  voided: null,
  ...facts,
});

const sideWatch = (): Watch => {
  const plain = watch(2, 70, 90, { purpose: 'side', menuDeviceId: 'processor' }, [75, 84]);
  return { ...plain, occurrences: plain.occurrences.map((seen) => ({ ...seen, menu: 'vanished' as const })) };
};

const changeId = uuid(50);

const escalation = (version: number, question: string): TriageRecord['escalations'][number] => ({
  version,
  question,
  waivers: [{ item: 'logs', reason: 'The projector keeps no log that can be read out.' }],
  waived: [{ item: 'logs', place: null }],
  at: at(300 + version),
  by,
  takenBy: null,
  outcome: null,
});

export function aRecord(facts: Partial<TriageRecord> = {}): TriageRecord {
  return {
    ticketId,
    openedAt: at(-600),
    openedBy: by,
    settings: { revision: 1, risk: 0.05, reopenDays: 30 },
    symptom: { kind: 'dropOuts', perHour: 3, lastsS: 2, ...untoldPattern },
    round: 1,
    resumeAt: 'substitute.ready',
    audit: {
      chainVersion: 1,
      findings: [{ code: 'length-long', severity: 'mustFix', place: { kind: 'link', linkId: 'L4' } }],
      firmwareBelowLevel: [],
      note: 'The optical cable is the long one.',
      at: at(1),
      by,
    },
    whatChanged: { answers: [{ kind: 'buildingWork', text: 'New ceiling', when: 'May' }], at: at(2), by },
    asFound: { chainVersion: 1, chain: homeCinema(), at: at(5), by },
    asLeft: null,
    watches: [
      watch(1, 10, 70, {}, [20, 31, 55]),
      sideWatch(),
      watch(3, 120, 260, { purpose: 'retest', changeId }),
    ],
    reproductionAccepted: true,
    cameBackWatchIds: [],
    sides: [
      {
        deviceId: 'processor',
        side: 'output',
        proof: { kind: 'menu', watchIds: [uuid(102)], occurrences: 2 },
        round: 1,
        at: at(91),
        by,
        withdrawn: null,
        superseded: null,
      },
    ],
    withoutSide: null,
    looks: [],
    changes: [
      {
        id: changeId,
        round: 1,
        kind: 'temporaryCable',
        target: { kind: 'link', linkId: 'L4' },
        detail: 'Ours, 10 m, over the stairs',
        expected: 'No drop-out in two hours if the cable is the cause.',
        settings: [],
        status: 'restored',
        diagnostic: true,
        plainCorrection: false,
        canBeUndone: true,
        showsCulprit: true,
        own: null,
        declaredAt: at(100),
        appliedAt: at(115),
        finishedAt: at(270),
        judgement: {
          verdict: 'cleared',
          computed: 'cleared',
          riskOfBeingFooled: 0.0083,
          level: 0.05,
          needed: { mode: 'time', totalWatchMin: 65.6, remainingMin: 0 },
          figures: 1,
          watchedMin: 140,
          tries: 0,
          occurrences: 0,
          reported: null,
          reasons: [message('quietMinutes', { watched: 140, before: 5, watchedBefore: 80 })],
          warnings: [],
          override: null,
          attributable: false,
          differences: [
            {
              deviceId: 'processor',
              key: 'Output depth',
              before: '12 bit',
              after: '10 bit',
              declared: false,
            },
          ],
          at: at(262),
          by,
        },
        earlierJudgements: [],
        oneOfTwo: null,
        enteredLate: null,
        closingNote: null,
        by,
      },
    ],
    culprit: null,
    remedy: null,
    quietProof: null,
    evidence: [],
    escalations: [escalation(1, 'Is the optical cable within its limits at this rate?')],
    diaries: [],
    reports: [],
    unattended: [],
    requests: [],
    waits: [],
    choices: [],
    leavingCheck: null,
    followUp: null,
    notes: [{ text: 'The client is away in December.', at: at(280), by }],
    closedAt: null,
    closing: null,
    setAside: [],
    reopenings: [],
    ...facts,
  };
}

export function anItem(n: number, facts: Partial<EvidenceItem> = {}): EvidenceItem {
  return {
    id: uuid(200 + n),
    kind: 'photo',
    sha256: String(n).padStart(64, '0'),
    tie: { deviceId: null, portId: null, linkId: 'L4', watchId: null, changeId: null, shows: 'label' },
    span: null,
    reading: null,
    at: at(40 + n),
    by,
    withdrawn: null,
    ticketId,
    description: 'Printed label',
    fileName: 'IMG 0042.JPG',
    mediaType: 'image/jpeg',
    sizeBytes: 120_000,
    originalSha256: 'f'.repeat(64),
    hasThumbnail: true,
    facts: null,
    uploadedAt: at(41 + n),
    ...facts,
  };
}

export const firmwareReading = (n: number, deviceId: string, level: string): EvidenceItem =>
  anItem(n, {
    kind: 'firmware',
    sha256: null,
    fileName: null,
    mediaType: null,
    sizeBytes: null,
    originalSha256: null,
    hasThumbnail: false,
    description: '',
    tie: { deviceId, portId: null, linkId: null, watchId: null, changeId: null, shows: null },
    reading: { kind: 'firmware', level },
  });

const labelRead = message('certifiedChanged', {
  cable: namedPlace(homeCinema(), { kind: 'link', linkId: 'L4' }),
  after: true,
});

export function aCaseInput(facts: Partial<CaseInput> = {}): CaseInput {
  return {
    language: 'en',
    packet: { id: uuid(30), version: 1, at: at(301), by },
    organisation: { id: uuid(5), name: 'Overwell Service' },
    ticket: {
      id: ticketId,
      number: 12,
      state: 'escalated.waiting',
      priority: 'normal',
      openedAt: at(-600),
      assigneeId: technicianId,
    },
    site: {
      id: uuid(6),
      client: 'Family Overwell',
      hazards: [{ kind: 'ladder', text: 'The projector hangs 4 m up.' }],
      timeZone: 'UTC',
    },
    intake: intake.parse({
      reporter: { name: 'A. Overwell', phone: '+44 1632 960 143', relation: 'the client' },
      symptom: { kind: 'dropOuts', perHour: 3 },
      affectedSources: ['player'],
      since: 'May',
      workedBefore: true,
    }),
    record: aRecord(),
    chain: {
      id: uuid(7),
      now: { version: 2, chain: homeCinema() },
      versions: [
        {
          version: 1,
          changedBy: by,
          changedByName: 'Robin',
          changedAt: at(-700),
          changes: [message('firstDescription')],
        },
        {
          version: 2,
          changedBy: by,
          changedByName: 'Robin',
          changedAt: at(290),
          changes: [labelRead],
        },
      ],
      sinceAsFound: [labelRead],
    },
    prerequisites: {
      chainVersion: 1,
      findings: [
        {
          rule: 'cable-too-long',
          severity: 'mustFix',
          place: { kind: 'link', linkId: 'L4' },
          placeName: message('thePlace', {
            place: namedPlace(homeCinema(), { kind: 'link', linkId: 'L4' }),
          }),
          text: message('asWritten', { sentence: 'It is longer than copper carries.' }),
          whatToDo: message('replaceByFactoryFittedOptical'),
          source: message('commonPractice'),
          cautions: [message('cautionOpticalLight')],
        },
      ],
    },
    minimumFirmware: [],
    logs: [],
    believed: { suspects: [], earlierRoundsCount: null },
    erased: [],
    evidence: [anItem(1), firmwareReading(2, 'processor', '3.10.2')],
    people: [
      { id: technicianId, name: 'Robin', role: 'technician' },
      { id: supportId, name: 'Kim', role: 'support' },
    ],
    before: null,
    ...facts,
  };
}

export const aCase = (facts: Partial<CaseInput> = {}) => caseFileOf(aCaseInput(facts));

import type { Chain, Link } from '../../../shared/contract/chain.ts';
import { deviceRoles, linkCategories, linkConstructions } from '../../../shared/contract/chain-names.ts';
import type { ChangeRecord } from '../../../shared/contract/change.ts';
import { cameBackAnswers, lastedAnswers } from '../../../shared/contract/diary-names.ts';
import { evidenceKinds, shownViews } from '../../../shared/contract/evidence-names.ts';
import type { CaseFile } from '../../../shared/contract/packet.ts';
import { hazardKinds } from '../../../shared/contract/site-names.ts';
import { completenessItems, type TriageRecord } from '../../../shared/contract/triage.ts';
import {
  actingParties,
  changeKinds,
  changeStatuses,
  checkAnswers,
  choiceWays,
  followUpOutcomes,
  type symptomKinds,
  verdicts,
  waitingKinds,
  watchPurposes,
  whatChangedKinds,
} from '../../../shared/contract/triage-names.ts';
import { caseFileOf } from '../../../src/features/packets/case-file.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { aCase, aCaseInput, anItem, aRecord, at, supportId, technicianId, uuid } from './a-case.ts';

/*
 * A case in which every value of the contract's lists occurs that a case can hold: no case of a day's work, but what a
 * summary has to have words for.
 */

const signed = { at: at(400), by: technicianId };
const withdrawn = { ...signed, reason: 'It was of another room.' };
const superseded = { because: 'correction' as const, ...signed };
const turn = <Item>(items: readonly Item[], index: number): Item => items[index % items.length] as Item;

function everyChain(): Chain {
  const chain = homeCinema();
  const links = linkConstructions.flatMap((construction) =>
    linkCategories.map((category) => ({ construction, category })),
  );
  const [first] = chain.links;
  if (first === undefined) throw new Error('the chain has no link');
  const every = links.map(
    (kinds, index): Link => ({
      ...first,
      ...kinds,
      id: `every${index}`,
      certified: index % 2 === 0,
      direction: turn(['notDirectional', 'asMarked', 'reversed', 'unknown'] as const, index),
      route: turn(['free', 'inWall', 'inConduit'] as const, index),
      sourceEnd: { ...first.sourceEnd, seated: turn(['yes', 'no', 'unknown'] as const, index) },
      sinkEnd: {
        ...first.sinkEnd,
        needsPower: true,
        powered: turn(['yes', 'no', 'unknown'] as const, index),
      },
    }),
  );
  const devices = chain.devices.map((device, index) => ({
    ...device,
    role: turn(deviceRoles, index),
    processesPicture: true,
    settings: { Depth: '12 bit' },
  }));
  const more = deviceRoles.map((role) => ({
    ...(devices[0] as (typeof devices)[number]),
    id: `is${role}`,
    role,
  }));
  return { ...chain, devices: [...devices, ...more], links: [...chain.links, ...every] };
}

function everyChange(record: TriageRecord): ChangeRecord[] {
  const [change] = record.changes;
  if (change?.judgement == null) throw new Error('the case has no judged change');
  const judged = change.judgement;
  return changeKinds.map((kind, index) => ({
    ...change,
    id: uuid(500 + index),
    kind,
    status: turn(changeStatuses, index),
    settings: [{ deviceId: 'processor', key: 'Output depth', to: '10 bit' }],
    judgement: {
      ...judged,
      verdict: turn(verdicts, index),
      computed: turn(verdicts, index + 1),
      override: index % 2 === 0 ? { reason: 'The client saw it go.' } : null,
      attributable: index % 3 === 0,
    },
    earlierJudgements: (['watchedOn', 'judgedAgain', 'correction'] as const).map((because, at) => ({
      ...judged,
      verdict: turn(verdicts, at),
      superseded: { because, ...signed },
    })),
  }));
}

function everyWatch(record: TriageRecord): TriageRecord['watches'] {
  const [watch] = record.watches;
  const [seen] = watch?.occurrences ?? [];
  if (watch === undefined || seen === undefined) throw new Error('the case has no watch');
  return watchPurposes.flatMap((purpose, index) =>
    ([null, withdrawn] as const).map((voided, at) => ({
      ...watch,
      id: uuid(600 + 2 * index + at),
      purpose,
      mode: turn(['time', 'trigger'] as const, index),
      tries: 12,
      menuDeviceId: purpose === 'side' ? 'processor' : null,
      changeId: purpose === 'retest' ? uuid(500) : null,
      voided,
      occurrences: [
        { ...seen, id: uuid(700 + 4 * index + 2 * at), menu: 'stayed' as const, withdrawn },
        {
          ...seen,
          id: uuid(701 + 4 * index + 2 * at),
          menu: 'vanished' as const,
          corrections: [{ ...signed, was: seen.at, reason: 'The clock was slow.' }],
        },
      ],
    })),
  );
}

const culprit = {
  place: { kind: 'port' as const, deviceId: 'processor', portId: 'out1' },
  explanation: 'The socket is loose.',
  changeId: null,
  confirmation: { kind: 'notDone' as const, reason: 'There was no time.' },
  namedBy: 'support' as const,
  ...signed,
};

/** What happened while nobody was there, and what the client chose and was asked. */
function everyBetweenVisits(record: TriageRecord): Partial<TriageRecord> {
  const [diaryId, unattendedId] = [uuid(960), uuid(961)];
  const reports = lastedAnswers.flatMap((lasted, index) =>
    cameBackAnswers.map((cameBack, more) => ({
      id: uuid(970 + 2 * index + more),
      diaryId,
      occurredAt: at(-300 + index),
      lasted,
      cameBack,
      receivedAt: at(-300 + index),
      withdrawn: more === 0 ? withdrawn : null,
    })),
  );
  const clientsYes = {
    name: 'A. Overwell',
    at: at(200),
    whatChanges: 'One input.',
    howToUndo: 'Plug it back.',
  };
  const safety = {
    liesAcrossFloor: false,
    hangs: false,
    staysOpen: false,
    lacksCooling: false,
    defeatsProtection: false,
  };
  return {
    diaries: [{ id: diaryId, openedAt: at(-600), until: at(400), closedAt: null, by: technicianId }],
    reports,
    unattended: ([null, at(300)] as const).map((endedAt) => ({
      id: unattendedId,
      round: 2,
      changeId: record.changes[0]?.id ?? '',
      startedAt: at(200),
      until: at(350),
      owner: 'The desk',
      safety,
      clientsYes,
      firmwareBefore: [{ deviceId: 'processor', level: '3.10.2' }],
      endedAt,
      firmwareAfter: [{ deviceId: 'processor', level: null }],
      logged: endedAt === null ? [] : [{ occurredAt: at(250), evidenceId: uuid(901) }],
      by: technicianId,
    })),
    waits: waitingKinds.flatMap((kind, index) =>
      ([null, 'resumed', 'revised'] as const).map((because) => ({
        round: 2,
        kind,
        what: 'The next one.',
        actor: turn(actingParties, index),
        actorName: null,
        until: at(380),
        leftInPlace: [record.changes[0]?.id ?? ''],
        ...signed,
        ended: because === null ? null : { because, note: '', ...signed },
      })),
    ),
    choices: choiceWays.map((way) => ({
      way,
      offered: choiceWays.map((each) => ({ way: each, minutes: 40, days: 2, sureness: 0.5, change: null })),
      chosenBy: 'A. Overwell',
      round: 2,
      ...signed,
      outcome: { kind: 'held' as const, ...signed },
    })),
    leavingCheck: {
      pictures: checkAnswers.map((answer) => ({ sourceId: 'player', displayId: 'projector', answer })),
      sound: 'fails',
      usualStart: 'notChecked',
      note: '',
      ...signed,
    },
    followUp: {
      askBy: null,
      since: at(390),
      answers: followUpOutcomes.map((heard) => ({ heard, note: '', ...signed })),
    },
  };
}

export function everyRecord(): TriageRecord {
  const record = aRecord();
  const [side] = record.sides;
  const [escalation] = record.escalations;
  if (side === undefined || escalation === undefined || record.asFound === null)
    throw new Error('the case has no side, no escalation or no chain');
  const setAside = [
    'culpritWithdrawn',
    'remedyWithdrawn',
    'faultCameBack',
    'reopened',
    'caseAccepted',
    'correction',
  ] as const;
  const outcomes = ['accepted', 'handedBack', 'stepDirected', 'resubmitted', 'recalled'] as const;
  return aRecord({
    round: 2,
    asFound: { ...record.asFound, chain: everyChain() },
    whatChanged: {
      answers: whatChangedKinds.map((kind) => ({ kind, text: '', when: null })),
      ...signed,
    },
    watches: [...record.watches, ...everyWatch(record)],
    sides: [
      { ...side, round: 2 },
      { ...side, side: 'input', withdrawn },
      { ...side, side: 'input', superseded },
      { ...side, side: 'input', round: 1 },
    ],
    changes: everyChange(record),
    culprit,
    remedy: {
      kind: 'workaround',
      what: 'Run it at a lower rate.',
      limits: 'No high rates.',
      acceptedBy: 'A. Overwell',
      acceptedAt: at(390),
    },
    setAside: setAside.map((because) => ({
      culprit,
      remedy: { kind: 'noFaultFound', what: 'It was not seen again.' },
      quietProof: null,
      asLeft: null,
      closing: null,
      because,
      reason: because === 'correction' ? '' : 'It came back.',
      ...signed,
    })),
    ...everyBetweenVisits(record),
    requests: completenessItems.map((item, index) => ({
      id: uuid(800 + index),
      kind: 'information',
      item,
      text: 'More of it, please.',
      change: null,
      at: at(310),
      by: supportId,
      answer:
        index % 2 === 0
          ? null
          : { text: 'There is none.', evidenceIds: [uuid(901)], at: at(320), by: technicianId },
    })),
    escalations: [...outcomes, null].map((kind, index) => ({
      ...escalation,
      version: index + 1,
      waivers: completenessItems.map((item) => ({ item, reason: 'Not to be had.' })),
      outcome: kind === null ? null : { kind, text: '', at: at(330), by: supportId },
    })),
  });
}

/** The sixth version of the packet, after one that had nothing of it. */
export function everyCase(language: CaseFile['language']): CaseFile {
  const before = aCase({ record: aRecord({ watches: [], sides: [], changes: [] }) });
  const ties = { deviceId: 'processor', portId: 'out1', linkId: 'L4', watchId: null, changeId: uuid(500) };
  const evidence = evidenceKinds.flatMap((kind, index) =>
    shownViews.map((shows, at) =>
      anItem(700 + index * shownViews.length + at, {
        kind,
        tie: { ...ties, shows },
        withdrawn: at === 0 ? withdrawn : null,
        facts: kind === 'edid' ? { edid: { blockCount: 2, checksumsValid: true, problems: [] } } : null,
        reading:
          kind === 'settings'
            ? { kind, values: { Depth: '12 bit' }, phase: turn(['before', 'after', 'apart'] as const, at) }
            : null,
      }),
    ),
  );
  const findings = aCaseInput().prerequisites.findings.flatMap((finding) =>
    (['mustFix', 'shouldFix', 'note'] as const).map((severity) => ({ ...finding, severity })),
  );
  const input = aCaseInput({
    language,
    packet: { id: uuid(31), version: 6, ...signed },
    record: everyRecord(),
    evidence,
    prerequisites: { chainVersion: 1, findings },
    before,
  });
  return caseFileOf({
    ...input,
    site: { ...input.site, hazards: hazardKinds.map((kind) => ({ kind, text: '' })) },
  });
}

/** The same case with each symptom in turn. */
export const withSymptom = (file: CaseFile, kind: (typeof symptomKinds)[number]): CaseFile => ({
  ...file,
  triage: { ...file.triage, symptom: { ...file.triage.symptom, kind } },
});

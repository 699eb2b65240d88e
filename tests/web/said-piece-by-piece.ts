import { compareFirmware, relateFirmware } from '../../shared/chain/firmware.ts';
import type { Place } from '../../shared/contract/chain.ts';
import { linkCategories } from '../../shared/contract/chain-names.ts';
import { symptomKinds, whatChangedKinds } from '../../shared/contract/triage.ts';
import { type Candidate, candidateText, whyNotHere } from '../../shared/isolation/candidates.ts';
import { whyNotByClient } from '../../shared/isolation/client-reach.ts';
import { failureModes, modeNames } from '../../shared/isolation/failure-modes.ts';
import {
  type FactKind,
  howSureByNow,
  judgeRetest,
  kitText,
  plainCase,
  planNext,
  type Result,
  standingOf,
  suspectsOf,
  type WatchRecord,
} from '../../shared/isolation/index.ts';
import { culpritSentence, moreBaselineAdvice } from '../../shared/isolation/plan-wording.ts';
import { resultText } from '../../shared/isolation/posterior.ts';
import { factNames, testNames } from '../../shared/isolation/wording.ts';
import { cautionTexts, changeCatalogue } from '../../state-machines/triage/changes/catalogue.ts';
import { whyNoMenuDevice } from '../../state-machines/triage/segment.ts';
import { changesOn } from '../bench/isolation-chains.ts';
import { homeCinema, withDevice, withLink } from '../chain/build-chain.ts';

const chain = withDevice(homeCinema(), 'streamer', { drawsMenu: false });
const facts = plainCase(chain, { kind: 'dropOuts', perHour: 3, lastsS: 2 });
const { model } = standingOf(facts);
const keys = <Name extends string>(record: Readonly<Record<Name, unknown>>): Name[] =>
  Object.keys(record) as Name[];

const watches: WatchRecord[] = [
  { mode: 'time', minutes: 60, occurrences: 0 },
  { mode: 'time', minutes: 60, occurrences: 1 },
  { mode: 'time', minutes: 60, occurrences: 12 },
  { mode: 'time', minutes: 7.5, occurrences: 1 },
  { mode: 'time', minutes: 600, occurrences: 0 },
  { mode: 'time', minutes: 600, occurrences: 2 },
  { mode: 'time', minutes: 0, occurrences: 1 },
  { mode: 'time', minutes: Number.NaN, occurrences: 1 },
  { mode: 'time', minutes: 60, occurrences: 1.5 },
  { mode: 'trigger', tries: 10, failures: 0 },
  { mode: 'trigger', tries: 10, failures: 9 },
  { mode: 'trigger', tries: 3, failures: 1 },
  { mode: 'trigger', tries: 40, failures: 1 },
  { mode: 'trigger', tries: 1, failures: 1 },
  { mode: 'trigger', tries: 1, failures: 2 },
  { mode: 'trigger', tries: 1.5, failures: 1 },
];

function saidOfRetests(): string[] {
  const options = [
    {},
    { sameTrigger: false },
    { occurrenceTimesMin: [1, 1.2, 1.4, 1.6, 40, 40.1, 40.2, 40.3, 40.4, 40.5, 40.6, 40.7] },
  ];
  return watches.flatMap((before) =>
    watches.flatMap((after) =>
      options.flatMap((option) => {
        const { reasons, warnings } = judgeRetest(before, after, option);
        return [...reasons, ...warnings, howSureByNow(before, after, option).sentence];
      }),
    ),
  );
}

function candidatesHere(): Candidate[] {
  const device = (deviceId: string): Place => ({ kind: 'device', deviceId });
  const candidate = (action: Candidate['action'], kit: Candidate['kit'] = []): Candidate => ({
    id: '',
    action,
    setupMin: 5,
    restoreMin: 5,
    kit,
    people: 2,
    riskMin: 0,
  });
  return [
    candidate({ kind: 'menu', deviceId: 'processor' }),
    ...keys(testNames).flatMap((test) =>
      [
        { kind: 'link', linkId: 'L4' } as const,
        { kind: 'link', linkId: 'L1' } as const,
        device('streamer'),
      ].map((target) => candidate({ kind: 'test', test, target })),
    ),
    candidate({ kind: 'test', test: 'bypassDevice', target: device('receiver') }, [{ kind: 'coupler' }]),
  ];
}

function saidOfCandidates(): string[] {
  const inWall = withLink(chain, 'L1', { route: 'inWall' });
  return candidatesHere().flatMap((candidate) => [
    candidateText(model, candidate),
    ...[chain, inWall].flatMap((of) => whyNotByClient(of, candidate, { reachableDevices: [] }) ?? []),
    whyNotHere(candidate, { kit: [], people: 1, refused: [] }) ?? '',
    whyNotHere(candidate, { kit: [], people: 2, refused: [] }) ?? '',
    whyNotHere(candidate, { kit: [], people: 2, refused: [{}] }) ?? '',
  ]);
}

function saidOfResults(): string[] {
  const target: Place = { kind: 'link', linkId: 'L3' };
  const results: Result[] = [
    ...keys<FactKind>(factNames).map((fact): Result => ({ kind: 'fact', fact, place: target })),
    ...keys(testNames).flatMap((test): Result[] => [
      { kind: 'outcome', test, target, outcome: 'cleared' },
      { kind: 'outcome', test, target, outcome: 'persists' },
      { kind: 'test', test, target, watch: { mode: 'trigger', tries: 1, failures: 0 } },
      { kind: 'putBack', test, target, watch: { mode: 'time', minutes: 7.5, occurrences: 1 } },
    ]),
  ];
  return results.map((result) => resultText(model, result));
}

/** Cases in which each thing that a client tells, or an audit finds, weighs. */
function saidOfTold(): string[] {
  const told = [
    ...symptomKinds.map((kind) => ({ ...facts, symptom: { kind, perHour: null, lastsS: null } })),
    ...whatChangedKinds.map((kind) => ({ ...facts, whatChanged: [{ kind }] })),
    { ...facts, workedBefore: true },
    { ...facts, workedBefore: false, today: '2026-01-01' },
    ...(['any', 'highRateOnly', 'protectedOnly'] as const).map((content) => ({ ...facts, content })),
    ...(['anyTime', 'atSwitching', 'whenWarm'] as const).map((moment) => ({ ...facts, moment })),
    { ...facts, affectedSources: ['player'], headroom: [{ linkId: 'L3', headroomFraction: -0.5 }] },
  ];
  return told.flatMap((each) => standingOf(each).model.steps.map(({ text }) => text));
}

/** Ends that cases seldom come to. */
function saidAtEnds(): string[] {
  const here = { kit: null, people: 2 as const, refused: [] };
  const changes = changesOn(chain);
  const plans = [
    planNext({ facts, changes: [], here: { ...here, refused: [{}] }, inPlace: null }),
    planNext({ facts, changes, here, inPlace: null, byClient: [] }),
    planNext({ facts, changes, here, inPlace: null, terms: { stopAt: 0.01 } }),
    planNext({ facts, changes, here, inPlace: null, terms: { escalationMin: 1 } }),
  ];
  return [
    ...plans.map(({ sentence }) => sentence),
    ...failureModes.map((mode) => culpritSentence("switch 'A'", 0.9, mode)),
    ...[1, 2].map(
      (occurrences) => moreBaselineAdvice({ mode: 'time', minutes: 60, occurrences }, 0.05) ?? '',
    ),
  ];
}

function saidOfFirmware(): string[] {
  const levels = [
    '1.2',
    '2024-03-04',
    '04/05/2024',
    '1234',
    '0x1f',
    'EU 1.2',
    'US 1.3',
    '1.2 (77)',
    '',
    'abc',
  ];
  return levels.flatMap((one) =>
    levels.flatMap((other) =>
      compareFirmware(one, other) === null ? [relateFirmware(one, other).reason ?? ''] : [],
    ),
  );
}

/** Every word of shared code that is said by itself, whether or not the other ways of asking come to it. */
export function saidPieceByPiece(): Set<string> {
  const said = [
    ...Object.values(modeNames),
    ...Object.values(testNames),
    ...Object.values(factNames).map((fact) => `${fact} at switch 'A'`),
    ...Object.values(cautionTexts),
    ...Object.values(changeCatalogue).flatMap(({ label, needs, instructions, afterwards }) => [
      label,
      ...needs,
      instructions,
      afterwards,
    ]),
    ...linkCategories.map((category) => kitText({ kind: 'cable', category, lengthM: 7.5 })),
    ...(['coupler', 'syncSwitch', 'display', 'source', 'extenderPair'] as const).map((kind) =>
      kitText({ kind }),
    ),
    ...suspectsOf(model).map(({ name }) => name),
    ...saidOfRetests(),
    ...saidOfCandidates(),
    ...saidOfResults(),
    ...saidOfTold(),
    ...saidAtEnds(),
    ...saidOfFirmware(),
    ...['streamer', 'nowhere'].flatMap((id) => whyNoMenuDevice(chain, id) ?? []),
  ];
  return new Set(said.filter((text) => text !== ''));
}

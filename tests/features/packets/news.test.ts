import { expect, test } from 'vitest';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import { type Message, message } from '../../../shared/message/index.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { uhd60 } from '../../signal/link-budget/chains.ts';
import { aCase, anItem, aRecord, at, firmwareReading, supportId, technicianId, uuid } from './a-case.ts';
import { everyRecord } from './rich-case.ts';

type Facts = NonNullable<Parameters<typeof aCase>[0]>;
/** What a second version says, given what is different in it. */
const newsOf = (after: Facts, before: Facts = {}): Message[] =>
  aCase({
    packet: { id: uuid(31), version: 1, at: at(400), by: technicianId },
    ...after,
    before: aCase(before),
  }).news;

const device = (deviceId: string) => namedPlace(homeCinema(), { kind: 'device', deviceId });
const cable = namedPlace(homeCinema(), { kind: 'link', linkId: 'L4' });

const request = (answer: string | null) => ({
  id: uuid(60),
  kind: 'information' as const,
  item: 'linkPhotos' as const,
  text: 'A photo of the source end, please.',
  change: null,
  at: at(310),
  by: supportId,
  answer: answer === null ? null : { text: answer, evidenceIds: [], at: at(320), by: technicianId },
});

test('a first version has no news, and neither has one in which nothing changed', () => {
  expect(aCase().news).toEqual([]);
  expect(newsOf({})).toEqual([]);
});

test('an answer', () => {
  expect(
    newsOf(
      { record: aRecord({ requests: [request('Here it is.')] }) },
      { record: aRecord({ requests: [request(null)] }) },
    ),
  ).toEqual([
    message('news/requestAnswered', {
      request: 'A photo of the source end, please.',
      answer: 'Here it is.',
    }),
  ]);
});

test('evidence that came and evidence that was withdrawn', () => {
  const [label, firmware] = [anItem(1), firmwareReading(2, 'processor', '3.10.2')];
  const withdrawn = { reason: 'Of another cable.', at: at(330), by: technicianId };
  expect(
    newsOf({ evidence: [{ ...label, withdrawn }, firmware, firmwareReading(3, 'projector', '1.8.1')] }),
  ).toEqual([
    message('news/evidenceAdded', {
      item: message('news/evidenceItem', {
        kind: 'firmware',
        of: device('projector'),
        reading: message('news/levelRead', { level: '1.8.1' }),
        description: null,
        fileName: null,
      }),
    }),
    message('news/evidenceWithdrawn', {
      item: message('news/evidenceItem', {
        kind: 'photo',
        of: cable,
        reading: null,
        description: 'Printed label',
        fileName: '001-photo-IMG-0042.jpg',
      }),
      reason: 'Of another cable.',
    }),
  ]);
});

test('watches, with how often the fault came in those that count, and what does not count any more', () => {
  const record = aRecord();
  const [first] = record.watches;
  if (first === undefined) throw new Error('no watch');
  const more = { ...first, id: uuid(190) };
  expect(newsOf({ record: { ...record, watches: [...record.watches, more] } })).toEqual([
    message('news/watched', { watches: 1, seen: 3 }),
  ]);
  const voided = { at: at(390), by: technicianId, reason: 'Of another room.' };
  expect(newsOf({ record: { ...record, watches: [...record.watches, { ...more, voided }] } })).toEqual([
    message('news/watched', { watches: 1, seen: 0 }),
    message('log/watchVoided', { reason: 'Of another room.' }),
  ]);
});

test('a side that was found, and one that was withdrawn', () => {
  const record = aRecord();
  const withdrawn = { at: at(340), by: technicianId, reason: 'The menu was not up.' };
  expect(newsOf({ record }, { record: { ...record, sides: [] } })).toContainEqual(
    message('news/sideFound', { device: device('processor'), side: 'output' }),
  );
  expect(
    newsOf({ record: { ...record, sides: record.sides.map((side) => ({ ...side, withdrawn })) } }),
  ).toContainEqual(
    message('log/sideWithdrawn', { device: device('processor'), reason: 'The menu was not up.' }),
  );
  const superseded = { because: 'correction' as const, at: at(341), by: technicianId };
  expect(
    newsOf({ record: { ...record, sides: record.sides.map((side) => ({ ...side, superseded })) } }),
  ).toContainEqual(message('log/sideFell', { device: device('processor') }));
});

test('a change that went on', () => {
  const record = aRecord();
  const declared = record.changes.map((change) => ({
    ...change,
    status: 'declared' as const,
    judgement: null,
  }));
  expect(newsOf({ record }, { record: { ...record, changes: declared } })).toContainEqual(
    message('news/changePutBack', { change: 'temporaryCable', place: cable, verdict: 'cleared' }),
  );
});

test('a culprit, a remedy and a note', () => {
  const culprit = {
    place: { kind: 'link' as const, linkId: 'L4' },
    explanation: 'Gone with another cable.',
    changeId: uuid(50),
    confirmation: { kind: 'notDone' as const, reason: 'The client had to leave.' },
    namedBy: 'technician' as const,
    at: at(350),
    by: technicianId,
  };
  const record = aRecord();
  const notes = [...record.notes, { text: 'Ask for the plug size.', at: at(351), by: technicianId }];
  const remedy = { kind: 'permanent' as const, what: 'Pull a new cable.' };
  expect(newsOf({ record: { ...record, culprit, remedy, notes } })).toEqual([
    message('news/culpritNamed', { place: cable }),
    message('news/remedyChosen', { what: 'Pull a new cable.' }),
    message('news/noteBy', { name: 'Robin', text: 'Ask for the plug size.' }),
  ]);
});

test('the description of the chain, and what is no longer missing', () => {
  const input = aCase();
  const versions = [
    ...input.chain.versions,
    {
      version: 3,
      changedBy: technicianId,
      changedByName: 'Robin',
      changedAt: at(360),
      changes: [message('formatWanted', { format: uhd60 })],
    },
  ];
  expect(newsOf({ chain: { ...input.chain, now: { ...input.chain.now, version: 3 }, versions } })).toEqual([
    message('formatWanted', { format: uhd60 }),
  ]);
  const log = anItem(3, { kind: 'log', mediaType: 'text/plain', span: { from: at(0), to: at(100) } });
  const { hasThumbnail, ...ref } = log;
  const isThere = ({ code }: Message): boolean => code === 'news/noLongerMissing';
  expect(newsOf({ record: aRecord({ evidence: [ref] }) }).filter(isThere)).toEqual([
    message('news/noLongerMissing', { item: 'logs' }),
  ]);
});

test('what was reported, left in, chosen, waited for and tried before leaving', () => {
  const record = aRecord();
  const { diaries, reports, unattended, waits, choices, leavingCheck } = everyRecord();
  const after = { ...record, diaries, reports, unattended, waits, choices, leavingCheck };
  const news = newsOf({ record: after }).map(({ code }) => code);
  expect(newsOf({ record: after })).toContainEqual(
    message('news/reported', { reports: reports.filter(({ withdrawn }) => withdrawn === null).length }),
  );
  expect(news.filter((code) => code === 'news/waited')).toHaveLength(waits.length);
  expect(news.filter((code) => code === 'log/clientChose')).toHaveLength(choices.length);
  expect(news.filter((code) => code === 'log/leftInPlace')).toHaveLength(unattended.length);
  expect(news.filter((code) => code === 'log/checkedBeforeLeaving')).toHaveLength(1);
  expect(newsOf({ record: after }, { record: after })).toEqual([]);
});

test('a change that was made before arrival, as what it is', () => {
  const record = aRecord();
  const changes = record.changes.map((change) => ({
    ...change,
    enteredLate: { madeBy: 'The client', seen: 'came' as const, at: at(10) },
  }));
  const [late] = changes;
  expect(newsOf({ record: { ...record, changes } }, { record: { ...record, changes: [] } })).toContainEqual(
    message('log/lateChangeEntered', {
      change: 'temporaryCable',
      place: cable,
      madeAt: late?.declaredAt ?? '',
      madeBy: 'The client',
      seen: 'came',
    }),
  );
});

import { describe, expect, test } from 'vitest';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { ChangeRecord, TriageRecord } from '../../../shared/contract/triage.ts';
import { english } from '../../../shared/message/en/index.ts';
import { message, messageText } from '../../../shared/message/index.ts';
import { plainText } from '../../../shared/message/marks.ts';
import { caseSummary } from '../../../src/features/packets/summary/index.ts';
import { summaryWordsEn } from '../../../src/features/packets/summary/words-en.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { aCase, aCaseInput, aRecord, at, technicianId, uuid } from './a-case.ts';
import { textOf } from './page-text.ts';

const words = summaryWordsEn.opening;
const cable: Place = { kind: 'link', linkId: 'L4' };
const placeWords = (place: Place): string =>
  plainText(english.say('UTC').place(namedPlace(homeCinema(), place)), english.quotes);
const summaryOf = (record: TriageRecord): string => textOf(caseSummary(aCase({ record }), new Map()));
/** The record with its one change judged like this. */
function recordWith(judged: Partial<NonNullable<ChangeRecord['judgement']>>): TriageRecord {
  const record = aRecord();
  return {
    ...record,
    changes: record.changes.map((change) => ({
      ...change,
      judgement: change.judgement === null ? null : { ...change.judgement, ...judged },
    })),
  };
}
/** What stands above the first heading of the page: what is at fault, what shows it, what is asked. */
const leadOf = (text: string): string => text.slice(0, text.indexOf(words.inShort));

describe('what a summary leads with', () => {
  test('is the suspects, what shows them, and then the question', () => {
    const lead = leadOf(summaryOf(recordWith({ attributable: false })));
    const order = [words.suspect, words.proof, words.question].map((word) => lead.indexOf(word));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(Math.min(...order)).toBeGreaterThan(0);
    expect(lead).toContain(placeWords(cable));
  });

  test('is the suspects in the order of their chances, with these; without what was acquitted or lies elsewhere', () => {
    const chance = (place: Place | null, probability: number) => ({ place, probability });
    const [projector, player] = (['projector', 'player'] as const).map(
      (deviceId): Place => ({ kind: 'device', deviceId }),
    ) as [Place, Place];
    const suspects = [
      chance(projector, 0.5),
      chance(cable, 0.3),
      chance({ kind: 'chain' }, 0.1),
      chance(player, 0.06),
      chance(null, 0.04),
    ];
    const leadWith = (record: TriageRecord): string =>
      leadOf(
        textOf(caseSummary(aCase({ record, believed: { suspects, earlierRoundsCount: null } }), new Map())),
      );
    const one = leadWith({ ...recordWith({ attributable: false }), sides: [] });
    const named = [projector, cable, player].map((place) => one.indexOf(placeWords(place)));
    expect(named).toEqual(named.toSorted((a, b) => a - b));
    expect(Math.min(...named)).toBeGreaterThan(0);
    expect(one).toContain(words.atChance(placeWords(projector), english.say('UTC').percent(0.5)));
    const narrowed = leadWith(recordWith({ attributable: false }));
    expect(narrowed).toContain(placeWords(cable));
    expect(narrowed).not.toContain(placeWords(player));
    const acquitted = leadWith({ ...recordWith({ verdict: 'persists', attributable: true }), sides: [] });
    expect(acquitted).toContain(placeWords(projector));
    expect(acquitted).not.toContain(placeWords(cable));
  });

  test('says once, and only after a new round has begun, what earlier rounds count for', () => {
    const textWith = (earlierRoundsCount: number | null): string => {
      const believed = { suspects: [], earlierRoundsCount };
      return textOf(caseSummary(aCase({ record: { ...aRecord(), round: 2 }, believed }), new Map()));
    };
    expect(textWith(0.5).split(words.earlierRoundsCount(2, english.say('UTC').percent(0.5)))).toHaveLength(2);
    expect(textWith(null)).not.toContain(words.earlierRounds);
  });

  test('names no part that was acquitted', () => {
    const text = summaryOf(recordWith({ verdict: 'persists', attributable: true }));
    expect(leadOf(text)).toContain(words.suspect);
    expect(leadOf(text)).not.toContain(placeWords(cable));
    // Where the side is told, it is struck out, with what acquitted it.
    expect(text).toContain(`${placeWords(cable)} ${summaryWordsEn.side.acquittedBy(1)}`);
  });

  test('says what was acquitted where no side was found, and that nothing is left where all was', () => {
    const acquitted = recordWith({ verdict: 'persists', attributable: true });
    const lead = leadOf(summaryOf({ ...acquitted, sides: [] }));
    expect(lead).toContain(words.anythingBut(placeWords(cable)));
    const [change] = acquitted.changes;
    const every = homeCinema().devices.map(({ id }, index) => ({
      ...(change as ChangeRecord),
      id: uuid(950 + index),
      kind: 'bypassDevice' as const,
      target: { kind: 'device' as const, deviceId: id },
    }));
    expect(leadOf(summaryOf({ ...acquitted, changes: [...acquitted.changes, ...every] }))).toContain(
      words.allAcquitted,
    );
  });

  test('is the change that the fault went away with, though it shows no one part: it leads before the side', () => {
    const cleared = recordWith({ attributable: true });
    const throttled: TriageRecord = {
      ...cleared,
      changes: cleared.changes.map((change) => ({
        ...change,
        kind: 'limitOutputBandwidth',
        target: { kind: 'port', deviceId: 'processor', portId: 'out1' },
      })),
    };
    const lead = leadOf(summaryOf(throttled));
    expect(lead).toContain(words.suspect);
    const [before = ''] = words.clearedBy('', false).split(/[.:]/u);
    const proofAt = lead.indexOf(before);
    expect(proofAt).toBeGreaterThan(lead.indexOf(words.proof));
    const [side = ''] = summaryWordsEn.side.lies('').split('.');
    expect(lead.indexOf(side.trim(), proofAt)).toBeGreaterThan(proofAt);
    expect(leadOf(summaryOf(recordWith({ attributable: false })))).not.toContain(before);
  });

  test('is no suspect once a part was shown to be the cause', () => {
    const text = summaryOf(recordWith({ attributable: true }));
    const lead = leadOf(text);
    expect(lead).toContain(`${words.shown} ${placeWords(cable)}`);
    expect(lead).not.toContain(words.suspect);
    expect(text).not.toContain(summaryWordsEn.chain.heavyOutline);
  });
});

describe('a summary', () => {
  test('says how the fault comes, with what, and on which displays', () => {
    const record = aRecord();
    const said = {
      ...record.symptom,
      pattern: { kind: 'warm', afterMin: 40 } as const,
      onlyWith: { kind: 'title', what: 'The long river', deviceId: null } as const,
    };
    const intake = {
      ...aCaseInput().intake,
      affectedDisplays: ['projector'],
      content: 'highRateOnly' as const,
    };
    const text = textOf(caseSummary(aCase({ record: { ...record, symptom: said }, intake }), new Map()));
    const inEnglish = (code: ReturnType<typeof message>) => messageText(code, english, 'UTC');
    expect(text).toContain(inEnglish(message('comesOnceWarm', { after: 40 })));
    expect(text).toContain(inEnglish(message('showsOnlyWith', { kind: 'title', what: 'The long river' })));
    expect(text).toContain(
      `${summaryWordsEn.client.displays} ${placeWords({ kind: 'device', deviceId: 'projector' })}`,
    );
    expect(text).toContain(summaryWordsEn.client.contents.highRateOnly);
  });

  test('speaks of the risk of being fooled only where something was cleared', () => {
    expect(summaryOf(recordWith({ verdict: 'cleared' }))).toContain(summaryWordsEn.changes.risk);
    expect(summaryOf(recordWith({ verdict: 'persists' }))).not.toContain(summaryWordsEn.changes.risk);
  });

  test('has second line’s directions, with their answers', () => {
    const change = { kind: 'reseat', target: cable } as const;
    const by = technicianId;
    const direction = {
      id: uuid(900),
      kind: 'step',
      item: null,
      text: 'Press both ends in',
      change,
    } as const;
    const answer = { text: 'Done: it clicked', evidenceIds: [], at: at(200), by };
    const text = summaryOf({ ...aRecord(), requests: [{ ...direction, at: at(190), by, answer }] });
    expect(text).toContain(`${summaryWordsEn.requests.directed}: `);
    expect(text).toContain('Press both ends in');
    expect(text).toContain('Done: it clicked');
  });
});

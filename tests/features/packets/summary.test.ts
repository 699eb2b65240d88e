import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../shared/contract/packet.ts';
import { createLogReader, logFindings } from '../../../shared/logs/index.ts';
import { english, enTerms } from '../../../shared/message/en/index.ts';
import { type Message, message, messageText } from '../../../shared/message/index.ts';
import { plainText } from '../../../shared/message/marks.ts';
import { chainDrawing } from '../../../src/features/packets/summary/chain-drawing.ts';
import { caseSummary } from '../../../src/features/packets/summary/index.ts';
import { arbitraryChain } from '../../chain/arbitrary-chain.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { aCase, anItem, aRecord, at, technicianId, uuid } from './a-case.ts';
import { textOf } from './page-text.ts';

const inEnglish = (said: Message): string => messageText(said, english, 'UTC');
const placeWords = (place: Place): string =>
  plainText(english.say('UTC').place(namedPlace(homeCinema(), place)), english.quotes);
const processor = placeWords({ kind: 'device', deviceId: 'processor' });
const photo = 'data:image/jpeg;base64,/9j/4AAQ';
const page = (file: CaseFile): string => caseSummary(file, new Map([[uuid(201), photo]]));

describe('read cold', () => {
  const text = textOf(page(aCase()));

  test.each([
    ['the question', 'Is the optical cable within its limits at this rate?'],
    ['what the client sees', `${enTerms.symptom.dropOuts}, about 3 times an hour, for about 2 s, since May`],
    ['how often it comes', 'Yes: seen 5 times in 80 min (3.8 an hour).'],
    ['the side', `The fault lies downstream of the menu of ${processor}.`],
    ['its proof', 'In 2 of 2 occurrences the menu vanished with the picture.'],
    ['half a device that is still suspect', `${processor}, its output side only`],
    ['what was expected of a change', 'Expected No drop-out in two hours if the cable is the cause.'],
    ['what came of it', 'Result cleared : the fault is gone with it.'],
    ['what that is worth', 'Risk of being fooled 0.8 %'],
    ['that it is not down to the change', 'Down to this change no : settings read before and after differ'],
    ['the setting that differed', `Output depth of ${processor} 12 bit 10 bit no`],
    ['what is in place', 'In place now The chain as found; nothing of what was tried.'],
    ['what changed before', `${enTerms.whatChanged.buildingWork}, New ceiling, May`],
    [
      'a finding with its source',
      [
        message('asWritten', { sentence: 'It is longer than copper carries.' }),
        message('replaceByFactoryFittedOptical'),
        message('commonPractice'),
      ]
        .map(inEnglish)
        .join(' '),
    ],
    ['a firmware level with who read it', 'Cinema processor 3.10.2 read by Robin'],
    ['why something is left out', 'Waived: The projector keeps no log that can be read out.'],
    ['the hazard', `${enTerms.hazard.ladder}: The projector hangs 4 m up.`],
    ['a caution', inEnglish(message('cautionOpticalLight'))],
    ['a note', 'The client is away in December.'],
  ])('it says %s', (_what, sentence) => {
    expect(text).toContain(sentence);
  });

  test('it says what a log shows of the fault, and that it proves nothing where there is none', () => {
    expect(text).toContain('No log was read.');
    const { watches } = aRecord();
    const seen = watches.flatMap(({ occurrences }) => occurrences).map((occurrence) => occurrence.at);
    const reader = createLogReader();
    for (const moment of seen.slice(0, 1)) reader.push(`${moment} output A: sync lost\n`);
    const log = {
      evidenceId: uuid(201),
      deviceId: 'processor',
      fileName: 'evening.log',
      reading: reader.finish(),
    };
    const said = textOf(page(aCase({ logs: [logFindings(log, watches)] })));
    expect(said).toContain(`evening.log of ${processor}`);
    expect(said).toContain(`${inEnglish(message('logEventKind', { kind: 'syncLost' }))}, line 1`);
    expect(said).toContain('nothing: the log does not reach there');
  });

  test('it says nothing of how to reach the client', () => {
    expect(text).not.toContain('960 143');
    expect(text).not.toContain('A. Overwell');
  });

  test('a diagnostic change that is still in place is said at the top', () => {
    const changes = aRecord().changes.map((change) => ({
      ...change,
      status: 'judged' as const,
      finishedAt: null,
    }));
    const text = textOf(page(aCase({ record: aRecord({ changes }) })));
    expect(text).toContain(
      `In place now Diagnostic, to be put back: ${inEnglish(message('changeName', { change: 'temporaryCable' }))}`,
    );
  });

  test('a setting is what was read last, but not what a change that was put back had made of it', () => {
    const read = (n: number, phase: 'before' | 'after' | 'apart', value: string, changeId: string | null) =>
      anItem(n, {
        kind: 'settings',
        sha256: null,
        hasThumbnail: false,
        tie: { deviceId: 'processor', portId: null, linkId: null, watchId: null, changeId, shows: null },
        reading: { kind: 'settings', values: { Depth: value, [`only in ${n}`]: true }, phase },
      });
    const [change] = aRecord().changes;
    const evidence = [
      read(1, 'before', '12 bit', change?.id ?? ''),
      read(2, 'after', '8 bit', change?.id ?? ''),
      read(3, 'apart', '10 bit', null),
    ];
    const settings = (record = aRecord()) => textOf(page(aCase({ evidence: evidence.slice(0, 2), record })));
    expect(settings()).toContain('Depth 12 bit read by Robin');
    const kept = aRecord().changes.map((one) => ({ ...one, status: 'kept' as const }));
    expect(settings(aRecord({ changes: kept }))).toContain('Depth 8 bit read by Robin');
    expect(textOf(page(aCase({ evidence })))).toContain('Depth 10 bit read by Robin');
  });

  test('that the fault came back when a change was put back is said at the top', () => {
    const record = aRecord();
    const [seen] = record.watches;
    const [change] = record.changes;
    if (seen === undefined || change === undefined) throw new Error('the case has no watch or change');
    const confirm = { ...seen, id: uuid(199), purpose: 'confirm' as const, changeId: change.id };
    const text = textOf(page(aCase({ record: { ...record, watches: [...record.watches, confirm] } })));
    expect(text).toContain(
      "'HDMI IN1' (but more than that had changed), and came back when that was put back.",
    );
  });

  test('an EDID says whose it is and whether it is sound', () => {
    const edid = {
      manufacturer: 'ZQX',
      productName: 'L-40',
      blockCount: 2,
      checksumsValid: false,
      problems: [],
    };
    const evidence = [anItem(1, { kind: 'edid', hasThumbnail: false, facts: { edidHex: '00', edid } })];
    expect(textOf(page(aCase({ evidence })))).toContain('EDID of ZQX L-40, 2 blocks, checksum wrong');
  });

  test('a case with nothing done yet is a page too', () => {
    const record = aRecord({
      audit: null,
      whatChanged: null,
      asFound: null,
      watches: [],
      sides: [],
      changes: [],
      notes: [],
    });
    const text = textOf(page(aCase({ record, evidence: [] })));
    expect(text).toContain('Reproduced No: nothing was watched yet.');
    expect(text).toContain('The chain as described; not yet recorded as found');
    expect(text).toContain('Side Not known yet.');
  });

  test('what is new since the version before', () => {
    const first = aCase();
    const second = aCase({
      packet: { id: uuid(31), version: 2, at: at(400), by: technicianId },
      evidence: [...first.evidence, anItem(3, { description: 'Source end' })],
      before: first,
    });
    const [news] = second.news.map(inEnglish);
    expect(textOf(page(second))).toContain(`New since version 1 ${news}`);
    expect(news).toContain('003-photo-IMG-0042.jpg');
    expect(textOf(page(first))).not.toContain('New since');
  });
});

describe('safe to open', () => {
  /** Every sentence that somebody could have typed, made hostile. */
  const hostile = (value: unknown): unknown => {
    if (typeof value === 'string')
      return /^[\da-f-]{36}$|^\d{4}-\d\d-\d\d/.test(value) ? value : `${value}<b x="'&>`;
    if (Array.isArray(value)) return value.map(hostile);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, inner]) => [key, keepsItsWord(key) ? inner : hostile(inner)]),
    );
  };
  const keepsItsWord = (key: string): boolean =>
    /^(kind|code|language|menuDeviceId|side|verdict|computed|status|severity|purpose|mode|menu|shows|role|direction|id|.*Ids?|construction|category|route|powered|seated|encoding|item|namedBy|from|phase|path|contentProtection)$/.test(
      key,
    );

  test('nothing that was typed becomes markup', () => {
    const markup = page(hostile(aCase()) as CaseFile);
    expect(markup).not.toContain('<b x');
    expect(markup.match(/&lt;b x=&quot;&#39;&amp;&gt;/g)?.length).toBeGreaterThan(60);
  });

  test('no script, nothing from elsewhere, and a policy that says so', () => {
    const markup = page(aCase());
    expect(markup).not.toMatch(/<script|javascript:|https?:|url\(|@import| on\w+=/i);
    expect(markup).toContain(`content="default-src 'none'; style-src 'unsafe-inline'; img-src data:"`);
  });

  test('characters that turn the direction of writing are dropped', () => {
    const record = aRecord({ notes: [{ text: 'abc\u202egpj.exe', at: at(1), by: technicianId }] });
    expect(page(aCase({ record }))).toContain('abcgpj.exe');
  });

  test('photos are shown inside the page; links lead to the files of the bag', () => {
    const file = aCase();
    const markup = page(file);
    expect(markup).toContain(`<img src="${photo}"`);
    expect(file.evidence[0]?.path).toBe('evidence/001-photo-IMG-0042.jpg');
    expect(markup).toContain('<a href="evidence/001-photo-IMG-0042.jpg">');
  });
});

describe('whatever the chain', () => {
  test('every tag that opens closes', () => {
    fc.assert(
      fc.property(arbitraryChain(), (chain) => {
        const record = aRecord({
          asFound: { chainVersion: 1, chain, at: at(5), by: technicianId },
          sides: [],
        });
        expect(unclosed(page(aCase({ record })))).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  test('the drawing has every device once, inside its frame, and none on top of another', () => {
    fc.assert(
      fc.property(arbitraryChain(), (chain) => {
        const numbers = new Map(chain.links.map((link, index) => [link.id, index + 1]));
        const { markup } = chainDrawing(chain, { linkNumbers: numbers, suspects: new Set(), language: 'en' });
        const [width = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(markup) ?? [])
          .slice(1)
          .map(Number);
        const boxes = [...markup.matchAll(/<rect x="([\d.-]+)" y="([\d.-]+)" width="200" height="62"/g)].map(
          ([, x, y]) => ({ x: Number(x), y: Number(y) }),
        );
        expect(boxes).toHaveLength(chain.devices.length);
        for (const { x, y } of boxes) {
          expect(x >= 0 && x + 200 <= width && y >= 0 && y + 62 <= height).toBe(true);
        }
        for (const [index, one] of boxes.entries()) {
          for (const other of boxes.slice(index + 1)) {
            expect(Math.abs(one.x - other.x) >= 200 || Math.abs(one.y - other.y) >= 62).toBe(true);
          }
        }
        expect(markup.match(/<path /g) ?? []).toHaveLength(chain.links.length);
      }),
    );
  });
});

const standsAlone = new Set(['meta', 'img', 'br', '!doctype']);

function unclosed(markup: string): string[] {
  const open: string[] = [];
  for (const [, slash, name = '', end] of markup.matchAll(/<(\/?)([a-z!][a-z0-9]*)[^>]*?(\/?)>/gi)) {
    if (standsAlone.has(name.toLowerCase()) || end === '/') continue;
    if (slash === '') open.push(name);
    else if (open.pop() !== name) return [`</${name}>`];
  }
  return open;
}

import { describe, expect, test } from 'vitest';
import { caseFile } from '../../../shared/contract/packet.ts';
import { withDevice } from '../../chain/build-chain.ts';
import { aCase, aCaseInput, anItem, aRecord, at, firmwareReading, technicianId, uuid } from './a-case.ts';

const asFound = aRecord().asFound;
if (asFound === null) throw new Error('the test case has no chain as found');
const withChain = (facts: Parameters<typeof withDevice>[2]) =>
  aRecord({ asFound: { ...asFound, chain: withDevice(asFound.chain, 'processor', facts) } });

test('a case file fits its contract, before and after it was stored as JSON', () => {
  const file = aCase();
  expect(caseFile.parse(file)).toEqual(file);
  expect(caseFile.parse(JSON.parse(JSON.stringify(file)))).toEqual(file);
});

test('the question and waivers are those of its own version', () => {
  const record = aRecord({
    escalations: [1, 2].map((version) => ({
      version,
      question: `question ${version}`,
      waivers: version === 2 ? [{ item: 'edid' as const, reason: 'not asked for' }] : [],
      waived: [],
      at: at(300 + version),
      by: technicianId,
      takenBy: null,
      outcome: null,
    })),
  });
  const packet = { id: uuid(31), version: 2, at: at(302), by: technicianId };
  expect(aCase({ record, packet }).packet).toMatchObject({
    question: 'question 2',
    waivers: [{ item: 'edid' }],
  });
  expect(aCase({ record }).packet).toMatchObject({ question: 'question 1', waivers: [] });
});

test('the client can not be reached or visited by what is in it', () => {
  const text = JSON.stringify(aCase());
  expect(aCaseInput().intake.reporter.phone).toBe('+44 1632 960 143');
  expect(text).not.toContain('960 143');
  expect(text).not.toContain('A. Overwell');
});

describe('firmware', () => {
  const processorOf = (facts: Parameters<typeof aCase>[0]) =>
    aCase(facts).firmware.find(({ deviceId }) => deviceId === 'processor');

  test('the newest reading counts, and says who read it', () => {
    const evidence = [firmwareReading(1, 'processor', '3.9'), firmwareReading(2, 'processor', '3.10')];
    expect(processorOf({ evidence, record: withChain({ firmware: '1.0' }) })).toMatchObject({
      level: '3.10',
      from: 'reading',
      readAt: at(42),
      readBy: technicianId,
      evidenceId: uuid(202),
    });
  });

  test('a withdrawn reading does not count; then the description does', () => {
    const withdrawn = { reason: 'read off the wrong device', at: at(60), by: technicianId };
    const evidence = [{ ...firmwareReading(1, 'processor', '3.9'), withdrawn }];
    expect(processorOf({ evidence, record: withChain({ firmware: '1.0' }) })).toMatchObject({
      level: '1.0',
      from: 'description',
      readBy: null,
    });
    expect(processorOf({ evidence })).toMatchObject({ level: null, from: 'notKnown' });
  });

  test.each([
    ['2.9', 'yes'],
    // As decimals it would be above.
    ['3.9', 'notKnown'],
    ['3.10', 'no'],
    ['3.11', 'no'],
  ])('level %s is below 3.10: %s', (level, belowMinimum) => {
    const facts = {
      evidence: [firmwareReading(1, 'processor', level)],
      record: withChain({ model: 'NP-7' }),
      minimumFirmware: [{ model: 'NP-7', minimum: '3.10' }],
    };
    expect(processorOf(facts)).toMatchObject({ minimum: '3.10', belowMinimum });
  });
});

test('an item of evidence is called the same in every version, whatever came later or was withdrawn', () => {
  const first = aCase({ evidence: [anItem(1), anItem(2)] });
  const withdrawn = { reason: 'blurred', at: at(70), by: technicianId };
  const second = aCase({ evidence: [{ ...anItem(1), withdrawn }, anItem(2), anItem(3)] });
  expect(second.evidence.slice(0, 2).map(({ path }) => path)).toEqual(first.evidence.map(({ path }) => path));
});

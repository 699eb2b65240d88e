import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Place } from '../../shared/contract/chain.ts';
import { type Case, plainCase, type Result } from '../../shared/isolation/case.ts';
import { faultTable } from '../../shared/isolation/fault-table.ts';
import { type FaultModel, faultModelOf, type Hypothesis } from '../../shared/isolation/hypotheses.ts';
import { posteriorOf, suspectsOf } from '../../shared/isolation/posterior.ts';
import { message } from '../../shared/message/index.ts';
import { arbitraryChain } from '../chain/arbitrary-chain.ts';
import { homeCinema } from '../chain/build-chain.ts';
import { untoldPattern } from '../support/untold-pattern.ts';

const cinema = homeCinema();
const known = (facts: Partial<Case> = {}): Case => ({
  ...plainCase(cinema, { kind: 'dropOuts', perHour: 3, lastsS: 2, ...untoldPattern }),
  affectedDisplays: ['projector'],
  baseline: { mode: 'time', minutes: 60, occurrences: 3 },
  ...facts,
});
const link = (linkId: string): Place => ({ kind: 'link', linkId });
const device = (deviceId: string): Place => ({ kind: 'device', deviceId });

const shareOf = (
  model: FaultModel,
  chances: readonly number[],
  wanted: (each: Hypothesis) => boolean,
): number => model.hypotheses.reduce((sum, each, at) => sum + (wanted(each) ? (chances[at] ?? 0) : 0), 0);
/** Share of what is wanted, after these results, in a case with these facts. */
const share = (facts: Partial<Case>, wanted: (each: Hypothesis) => boolean): number => {
  const model = faultModelOf(known(facts), faultTable);
  return shareOf(model, posteriorOf(model), wanted);
};
const at =
  (...components: string[]) =>
  ({ component }: Hypothesis): boolean =>
    components.includes(component);
const mode =
  (...modes: string[]) =>
  (each: Hypothesis): boolean =>
    modes.includes(each.mode);

describe('what is suspected before any test', () => {
  it('follows the symptom', () => {
    const with_ = (kind: Case['symptom']['kind']) => ({
      symptom: { kind, perHour: null, lastsS: null, ...untoldPattern },
    });
    expect(share(with_('noHdr'), mode('edid', 'portMode'))).toBeGreaterThan(
      3 * share(with_('dropOuts'), mode('edid', 'portMode')),
    );
    expect(share(with_('contentProtectionMessage'), mode('contentProtection'))).toBeGreaterThan(0.3);
    expect(share(with_('sparkles'), mode('bandwidth', 'contact'))).toBeGreaterThan(0.7);
  });

  it('points upstream of the switch when one source only shows it', () => {
    const upstream = at('device:player', 'link:L1');
    expect(share({ affectedSources: ['player'] }, upstream)).toBeGreaterThan(0.7);
    expect(share({ affectedSources: ['player', 'streamer'] }, upstream)).toBeLessThan(0.05);
    expect(share({ affectedSources: ['player'] }, at('device:streamer', 'link:L2'))).toBeLessThan(0.01);
  });

  it('points at bandwidth when it shows only above a certain format, at contact after a move', () => {
    expect(share({ content: 'highRateOnly' }, mode('bandwidth'))).toBeGreaterThan(
      1.5 * share({ content: 'any' }, mode('bandwidth')),
    );
    expect(share({ whatChanged: [{ kind: 'move' }] }, mode('contact'))).toBeGreaterThan(
      1.5 * share({}, mode('contact')),
    );
  });

  it('is moved by findings, headroom and the age of a cable, each at its place', () => {
    const bandwidthAt = (linkId: string) => (each: Hypothesis) =>
      each.component === `link:${linkId}` && each.mode === 'bandwidth';
    const plain = share({}, bandwidthAt('L4'));
    const finding = {
      rule: 'certification',
      severity: 'mustFix' as const,
      place: link('L4'),
      text: message('findCertificationLabel'),
    };
    expect(share({ findings: [finding] }, bandwidthAt('L4'))).toBeGreaterThan(2 * plain);
    expect(
      share({ headroom: [{ linkId: 'L4', headroomFraction: -0.4 }] }, bandwidthAt('L4')),
    ).toBeGreaterThan(4 * plain);
    expect(share({ headroom: [{ linkId: 'L4', headroomFraction: 2 }] }, bandwidthAt('L4'))).toBeLessThan(
      plain / 2,
    );
    const old = { ...cinema, links: cinema.links.map((each) => ({ ...each, installedOn: '2012-01-01' })) };
    expect(share({ chain: old, today: '2026-11-25' }, mode('contact'))).toBeGreaterThan(
      1.2 * share({}, mode('contact')),
    );
  });

  it('leaves a cable its weight where two versions of content protection meet on it', () => {
    const finding = {
      rule: 'content-protection',
      severity: 'shouldFix' as const,
      place: link('L4'),
      text: message('findProtectionVersions'),
    };
    const cable = ({ component }: Hypothesis) => component === 'link:L4';
    expect(share({ findings: [finding] }, cable)).toBeGreaterThanOrEqual(share({}, cable));
  });

  it('never rules out something outside the model', () => {
    const results: Result[] = [
      {
        kind: 'test',
        test: 'temporaryCable',
        target: link('L4'),
        watch: { mode: 'time', minutes: 400, occurrences: 0 },
      },
    ];
    expect(share({ results }, at('outside'))).toBeGreaterThan(0);
  });

  it('holds the modes that a part can have, and no others', () => {
    const { hypotheses } = faultModelOf(known(), faultTable);
    const modesAt = (component: string) => hypotheses.filter(at(component)).map((each) => each.mode);
    expect(modesAt('link:L1')).toEqual(['bandwidth', 'contact', 'coupling']);
    expect(modesAt('link:L4')).toEqual(['bandwidth', 'contact', 'coupling', 'direction', 'linkPower']);
    expect(modesAt('device:player')).toContain('fiveVolt');
    expect(modesAt('device:projector')).not.toContain('fiveVolt');
  });
});

describe('what a result does', () => {
  const quiet = (minutes: number): Result => ({
    kind: 'test',
    test: 'temporaryCable',
    target: link('L4'),
    watch: { mode: 'time', minutes, occurrences: 0 },
  });
  const cable = at('link:L4');

  it('is as strong as the watch was long: no minutes say nothing, more say more', () => {
    const none = share({}, cable);
    expect(share({ results: [quiet(0)] }, cable)).toBeCloseTo(none, 12);
    const grown = [10, 40, 103, 400].map((minutes) => share({ results: [quiet(minutes)] }, cable));
    expect([none, ...grown]).toEqual([none, ...grown].toSorted((a, b) => a - b));
    expect(share({ results: [quiet(50), quiet(53)] }, cable)).toBeCloseTo(
      share({ results: [quiet(103)] }, cable),
      12,
    );
  });

  it('says nothing by quiet where the fault was never reproduced, but does by coming', () => {
    expect(share({ baseline: null, results: [quiet(103)] }, cable)).toBeCloseTo(
      share({ baseline: null }, cable),
      12,
    );
    const came: Result = { kind: 'outcome', test: 'temporaryCable', target: link('L4'), outcome: 'persists' };
    expect(share({ baseline: null, results: [came] }, cable)).toBeLessThan(share({}, cable) / 5);
  });

  it('is taken back when the fault comes after all in a longer watch of the same change', () => {
    const seen: Result = { ...quiet(30), watch: { mode: 'time', minutes: 30, occurrences: 1 } } as Result;
    expect(share({ results: [quiet(103), seen] }, cable)).toBeLessThan(share({}, cable) / 5);
  });

  it('tells one side from the other by the menu', () => {
    const upstream = at(
      'device:player',
      'device:streamer',
      'device:receiver',
      'link:L1',
      'link:L2',
      'link:L3',
    );
    const downstream = at('link:L4', 'device:projector');
    const answer = (answers: ('stayed' | 'vanished')[]) => ({
      results: answers.map((each): Result => ({ kind: 'menu', deviceId: 'processor', answer: each })),
    });
    expect(share(answer(['stayed']), upstream)).toBeGreaterThan(0.9);
    expect(share(answer(['vanished']), downstream)).toBeGreaterThan(2 * share({}, downstream));
    expect(share(answer(['vanished']), upstream)).toBeLessThan(share({}, upstream) / 2);
    // the same again adds little: a device that misleads does so every time
    const twice = share(answer(['vanished', 'vanished']), downstream);
    expect(twice - share(answer(['vanished']), downstream)).toBeLessThan(0.05);
  });

  it('of another source playing well is that the usual one’s own part is at fault', () => {
    const played: Result = {
      kind: 'test',
      test: 'otherSource',
      target: device('streamer'),
      watch: { mode: 'time', minutes: 110, occurrences: 0 },
    };
    expect(
      share({ affectedSources: ['player'], results: [played] }, at('device:player', 'link:L1')),
    ).toBeGreaterThan(0.9);
  });

  it('takes facts of logs and EDIDs for what they are, at their place', () => {
    const fact = (kind: 'restarted' | 'linkFellBack', place: Place): Partial<Case> => ({
      results: [{ kind: 'fact', fact: kind, place }],
    });
    const power = (each: Hypothesis) => each.component === 'device:receiver' && each.mode === 'powerOrHeat';
    expect(share(fact('restarted', device('receiver')), power)).toBeGreaterThan(4 * share({}, power));
    expect(share(fact('restarted', device('projector')), power)).toBeLessThan(1.1 * share({}, power));
  });
});

describe('the explanation', () => {
  it('adds up: decibans from the first to the last step are those of the odds now', () => {
    const results: Result[] = [
      { kind: 'menu', deviceId: 'processor', answer: 'vanished' },
      {
        kind: 'test',
        test: 'limitOutputBandwidth',
        target: device('processor'),
        watch: { mode: 'time', minutes: 103, occurrences: 0 },
      },
    ];
    const model = faultModelOf(known({ results, content: 'highRateOnly' }), faultTable);
    const [first] = suspectsOf(model);
    expect(first?.component).toBe('link:L4');
    const start = model.weights.reduce(
      (sum, weight, index) =>
        sum + (at('link:L4')(model.hypotheses[index] ?? { component: '', mode: 'outside' }) ? weight : 0),
      0,
    );
    const total = model.weights.reduce((sum, weight) => sum + weight, 0);
    const decibans = (chance: number) => 10 * Math.log10(chance / (1 - chance));
    const explained = first?.because.reduce((sum, each) => sum + each.decibans, 0) ?? 0;
    // steps under half a deciban are left out of the list
    expect(Math.abs(decibans(first?.probability ?? 0) - decibans(start / total) - explained)).toBeLessThan(
      1.5,
    );
    const processor = { kind: 'device', deviceId: 'processor' };
    expect(first?.because.map(({ text }) => text)).toMatchObject(
      expect.arrayContaining([
        expect.objectContaining({
          code: 'menuVanishedAt',
          values: { place: expect.objectContaining(processor) },
        }),
        expect.objectContaining({
          code: 'changeWatched',
          values: {
            change: 'limitOutputBandwidth',
            place: expect.objectContaining(processor),
            seen: { code: 'notSeenInMinutes', values: { minutes: 103 } },
          },
        }),
      ]),
    );
    expect(first?.modes[0]).toMatchObject({ mode: 'bandwidth' });
  });
});

describe('on any chain', () => {
  it('chances add up to 1 and stay above 0, whatever was seen', () => {
    fc.assert(
      fc.property(arbitraryChain(), fc.infiniteStream(fc.nat(1_000_000)), (chain, numbers) => {
        const next = (below: number) => Number(numbers.next().value) % Math.max(1, below);
        const results = Array.from({ length: next(6) }, (): Result => {
          const place = chain.links[next(chain.links.length)];
          const unit = chain.devices[next(chain.devices.length)];
          const watch = { mode: 'time' as const, minutes: next(200), occurrences: next(2) };
          if (next(3) === 0)
            return { kind: 'menu', deviceId: unit?.id ?? '', answer: next(2) ? 'stayed' : 'vanished' };
          return next(2)
            ? { kind: 'test', test: 'replaceCable', target: link(place?.id ?? ''), watch }
            : { kind: 'test', test: 'bypassDevice', target: device(unit?.id ?? ''), watch };
        });
        const facts = {
          ...plainCase(chain, { kind: 'dropOuts' as const, perHour: 3, lastsS: 2, ...untoldPattern }),
          results,
        };
        const model = faultModelOf(
          { ...facts, baseline: { mode: 'time', minutes: 60, occurrences: 3 } },
          faultTable,
        );
        const chances = posteriorOf(model);
        expect(chances.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 9);
        expect(chances.every((each) => each >= 0 && each <= 1)).toBe(true);
        expect(chances.at(-1)).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a result that counts for less', () => {
  const persists = (trust?: Result['trust']): Result => ({
    kind: 'outcome',
    test: 'replaceCable',
    target: link('L4'),
    outcome: 'persists',
    ...(trust === undefined ? {} : { trust }),
  });
  const decibansOf = (chance: number): number => 10 * Math.log10(chance / (1 - chance));

  it.each(['enteredLate', 'earlierRound'] as const)(
    'moves a suspect by its share of the decibans: %s',
    (trust) => {
      const before = share({ results: [] }, at('link:L4'));
      const inFull = share({ results: [persists()] }, at('link:L4'));
      const less = share({ results: [persists(trust)] }, at('link:L4'));
      expect(less).toBeLessThan(before);
      expect(less).toBeGreaterThan(inFull);
      const moved = decibansOf(before) - decibansOf(less);
      const movedInFull = decibansOf(before) - decibansOf(inFull);
      const power = faultTable.weighing.trust.figures[trust] ?? 0;
      expect(moved / movedInFull).toBeGreaterThan(power * 0.7);
      expect(moved / movedInFull).toBeLessThan(power * 1.3);
    },
  );

  it('says how much it counts, in what speaks against a suspect', () => {
    const model = faultModelOf(known({ results: [persists('earlierRound')] }), faultTable);
    const suspect = suspectsOf(model).find(({ component }) => component === 'link:L4');
    expect(suspect?.because.at(-1)?.text).toMatchObject({
      code: 'earlierRoundCounts',
      values: { said: { code: 'changeDidNotClear' }, weight: 0.5 },
    });
  });
});

import { expect, test } from 'vitest';
import { caseSummary } from '../../../src/features/packets/summary/index.ts';
import { aCase, aRecord, at, technicianId } from './a-case.ts';
import { textOf } from './page-text.ts';

const signed = { at: at(290), by: technicianId };
const page = (record = aRecord()): string => caseSummary(aCase({ record }), new Map());
const before = aRecord();

test('a voided watch says why it does not count, and counts nowhere', () => {
  const voided = { ...signed, reason: 'The wrong input was shown.' };
  const watches = before.watches.map((watch, index) => (index === 0 ? { ...watch, voided } : watch));
  const markup = page({ ...before, watches });
  expect(markup).toMatch(
    /<s>Reproducing the fault<\/s> does not count: The wrong input was shown\. \(Robin,/,
  );
  expect(markup.match(/<s>Black for two seconds<\/s>/g)).toHaveLength(3);
  const text = textOf(markup);
  expect(text).toContain('Reproduced Yes: seen 2 times in 20 min (6 an hour).');
  expect(text).not.toContain('seen 3 times');
  expect(text).not.toContain('seen 5 times');
});

test('nothing is reproduced where no watch counts', () => {
  const voided = { ...signed, reason: 'Nobody looked.' };
  const watches = before.watches.map((watch) => ({ ...watch, voided }));
  expect(textOf(page({ ...before, watches, sides: [] }))).toContain(
    'Reproduced No: nothing was watched yet.',
  );
});

test('a side that a correction took the ground from is struck through, as a withdrawn one is', () => {
  const struckSide = /<s>The fault lies downstream of the menu of [^<]* &#39;Cinema processor&#39;\.<\/s>/;
  const withSide = (facts: object) =>
    page({ ...before, sides: before.sides.map((side) => ({ ...side, ...facts })) });
  expect(withSide({})).not.toMatch(struckSide);
  const corrected = withSide({ superseded: { because: 'correction', ...signed } });
  const withdrawn = withSide({ withdrawn: { ...signed, reason: 'The menu was not up.' } });
  for (const markup of [corrected, withdrawn]) {
    expect(markup).toMatch(struckSide);
    expect(textOf(markup)).toContain('Side Not known yet.');
    expect(textOf(markup)).not.toContain('Heavy outline');
  }
  expect(textOf(withdrawn)).toContain('Withdrawn: The menu was not up.');
});

test('a moment that was put right says what it was before, and why', () => {
  const watches = before.watches.map((watch) => ({
    ...watch,
    occurrences: watch.occurrences.map((seen, index) =>
      index === 0
        ? { ...seen, at: at(25), corrections: [{ ...signed, was: at(20), reason: 'The clock was slow.' }] }
        : seen,
    ),
  }));
  expect(textOf(page({ ...before, watches }))).toContain(
    '2026-11-20 10:25:00 2 s Black for two seconds (before: 2026-11-20 10:20:00; put right: The clock was slow.)',
  );
});

test('a judgement that does not count any more stands beside the one that does, with why', () => {
  const changes = before.changes.map((change) => {
    if (change.judgement === null) throw new Error('the change is not judged');
    const superseded = { because: 'correction' as const, ...signed };
    return { ...change, earlierJudgements: [{ ...change.judgement, superseded }] };
  });
  expect(page({ ...before, changes })).toMatch(
    /<s>cleared \(Robin, [\d :-]+\)<\/s> does not count: what it rested on was corrected \(Robin,/,
  );
});

test('what a correction set aside says so, though nobody gave a reason', () => {
  const aside = {
    culprit: null,
    remedy: { kind: 'permanent' as const, what: 'Pull a new cable.' },
    quietProof: null,
    asLeft: null,
    closing: null,
    because: 'correction' as const,
    reason: '',
    ...signed,
  };
  expect(textOf(page({ ...before, setAside: [aside] }))).toContain(
    'Set aside Pull a new cable. – What it rested on was corrected. (Robin,',
  );
});

import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { asvs } from './asvs.ts';
import type { NamedTest } from './clause.ts';
import { defects } from './defects-table.ts';
import { apiRisks } from './owasp-api.ts';

/** Why a test that a row names is none; null where it stands in its file. */
function objectionTo([file, title]: NamedTest): string | null {
  if (!existsSync(file)) return `${file} is not there`;
  const source = readFileSync(file, 'utf8');
  return ["'", '"', '`'].some(
    (quote) => source.includes(`(${quote}${title}`) || source.includes(`\n    ${quote}${title}`),
  )
    ? null
    : `${file} has no test «${title}»`;
}

const objections = (tests: readonly NamedTest[]): string[] =>
  tests.map(objectionTo).filter((objection) => objection !== null);

describe('a catalogue of security', () => {
  it.each([...apiRisks, ...asvs])(
    '$clause is shown by tests that there are, or says what is open',
    ({ tests, open }) => {
      expect(objections(tests)).toEqual([]);
      expect(tests.length > 0 || open !== undefined).toBe(true);
    },
  );

  it('has all ten risks of the API list, and every row of its own number', () => {
    expect(apiRisks.map(({ clause }) => clause)).toEqual(
      Array.from({ length: 10 }, (_, at) => `API${at + 1}:2023`),
    );
    const clauses = asvs.flatMap(({ clause }) => clause.split(', '));
    expect(clauses.filter((clause) => !/^V\d+\.\d+\.\d+$/.test(clause))).toEqual([]);
    expect(new Set(clauses).size).toBe(clauses.length);
  });

  it('finds a test that is not there', () => {
    expect(objectionTo(['tests/config.test.ts', 'has no such test'])).not.toBeNull();
    expect(objectionTo(['tests/no-such-file.test.ts', 'names'])).not.toBeNull();
  });

  it('tells what is open', () => {
    const open = [...apiRisks, ...asvs].flatMap(({ clause, open: what }) =>
      what === undefined ? [] : [`${clause}: ${what}`],
    );
    process.stdout.write(`open:\n${open.join('\n')}\n`);
    expect(open.length).toBeLessThanOrEqual(12);
  });
});

describe('a defect that was found once', () => {
  it.each(defects)('has a test: $defect', ({ tests }) => {
    expect(tests.length).toBeGreaterThan(0);
    expect(objections(tests)).toEqual([]);
  });
});

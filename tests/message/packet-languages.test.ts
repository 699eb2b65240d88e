import { readdirSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { languageTags } from '../../shared/contract/language-names.ts';
import { caseFile } from '../../shared/contract/packet.ts';
import { symptomKinds } from '../../shared/contract/triage-names.ts';
import { codes } from '../../shared/message/codes/index.ts';
import { caseSummary } from '../../src/features/packets/summary/index.ts';
import { textOf } from '../features/packets/page-text.ts';
import { everyCase, withSymptom } from '../features/packets/rich-case.ts';

const contract = new URL('../../shared/contract/', import.meta.url);

/** What the lists of the contract hold that people must not see: names that no sentence would hold by chance. */
async function identifiers(): Promise<Set<string>> {
  const found = new Set<string>();
  const gather = (value: unknown): void => {
    if (typeof value === 'string' && /^[a-z]+([A-Z][a-z]*)+$|^[a-z]+\.[a-z]+$/.test(value)) found.add(value);
    if (typeof value === 'object' && value !== null) for (const inner of Object.values(value)) gather(inner);
  };
  for (const name of readdirSync(contract).filter((file) => file.endsWith('-names.ts')))
    gather(await import(new URL(name, contract).href));
  const gatherValues = (schema: unknown): void => {
    if (typeof schema !== 'object' || schema === null) return;
    const { enum: list, const: one } = schema as { enum?: unknown; const?: unknown };
    gather([list, one]);
    for (const inner of Object.values(schema)) gatherValues(inner);
  };
  gatherValues(z.toJSONSchema(caseFile, { unrepresentable: 'any', io: 'output' }));
  gather(Object.keys(codes));
  return found;
}

let names: Set<string>;
beforeAll(async () => {
  names = await identifiers();
});
const namesIn = (text: string): string[] =>
  text.split(/[^\p{L}\p{N}.]+|\.(?!\p{L})/u).filter((word) => names.has(word));

test('the identifiers that are looked for are there, and are found', () => {
  for (const name of [
    'temporaryCable',
    'dropOuts',
    'linkPhotos',
    'notRecorded',
    'substitute.ready',
    'asFoundRecorded',
  ])
    expect([name, names.has(name)]).toEqual([name, name !== 'asFoundRecorded']);
  expect(names.size).toBeGreaterThan(100);
  expect(namesIn('Lay a temporaryCable. It dropOuts.')).toEqual(['temporaryCable', 'dropOuts']);
});

describe.each(languageTags)('a packet in %s', (language) => {
  const file = everyCase(language);
  const page = caseSummary(file, new Map());

  test('fits the contract, so that all of it can come to pass', () => {
    expect(caseFile.parse(JSON.parse(JSON.stringify(file)))).toEqual(file);
  });

  test('names its language', () => {
    expect(file.language).toBe(language);
    expect(page).toContain(`<html lang="${language}">`);
  });

  test('shows no identifier of the code in its summary, whatever the symptom', () => {
    for (const kind of symptomKinds)
      expect(namesIn(textOf(caseSummary(withSymptom(file, kind), new Map())))).toEqual([]);
    expect(textOf(page)).not.toMatch(/undefined|\[object|NaN|\uFFFC|[\uFDD0-\uFDD3]/);
  });
});

/** Headings of sections, of columns and of facts. */
const headingsOf = (markup: string): string[] =>
  [...markup.matchAll(/<(h[12]|dt|th)( scope="col")?>([^<]*)</g)].map(([, , , heading = '']) => heading);

test('every heading is in the language of the packet', () => {
  const [english = [], german = []] = languageTags.map((tag) =>
    headingsOf(caseSummary(everyCase(tag), new Map())),
  );
  const same = new Set(english.filter((heading) => german.includes(heading)));
  const files = ['case.json', 'chain/', 'timeline.csv, timeline.json', 'log/', 'evidence/', 'SHA-256'];
  expect([...same].sort()).toEqual(['', 'Firmware', 'Symptom', ...files].sort());
});

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { germanSentence } from '../../src/web/words/german/index.ts';
import { labelPairs } from '../../src/web/words/german/labels.ts';
import { refusalPairs } from '../../src/web/words/german/refusals.ts';
import { saidInRefusal, saidInTimelines, saidOfTickets } from './said-of-tickets.ts';
import { saidPieceByPiece } from './said-piece-by-piece.ts';

/** Those that have no German. */
const lacking = (texts: Iterable<string>): string[] =>
  [...texts].filter((text) => germanSentence(text) === null);

/** Words that no German sentence holds, outside what it quotes. */
const englishOnly =
  /\b(?:the|of|from|to|and|or|is|are|isn’t|isn't|it|its|with|without|cable|port|display|when|while|that|this|not|no|nothing|nobody|before|after|fault|watch|seen|takes|needs|at|by|for)\b/i;
/** A quote that runs on over what it should hold apart. */
const torn = /„[^“]*['‘][^“]*“/;
/** What people write into the tickets of the tests, which stays in their words. */
const written =
  /Switch the source|The drop-outs stay away|The cable drops out at the full rate|A certified cable in its place/g;
const unquoted = (german: string): string => german.replaceAll(/„[^“]*“/g, '„“').replaceAll(written, '');

/** Those whose German is the English itself, or holds words of it. */
const halfEnglish = (texts: Iterable<string>): string[] =>
  [...texts].flatMap((text) => {
    const german = germanSentence(text);
    if (german === null) return [];
    if (german !== text && !englishOnly.test(unquoted(german)) && !torn.test(german)) return [];
    return sameInBoth.has(text) ? [] : [`${text} → ${german}`];
  });
/** Technical words, and places whose names are all there is to them. */
const sameInBoth = new Set(['Firmware']);

function everyWordHasGerman(texts: ReadonlySet<string>, atLeast: number): void {
  expect(texts.size).toBeGreaterThan(atLeast);
  expect(lacking(texts).slice(0, 20)).toEqual([]);
  expect(halfEnglish(texts).slice(0, 20)).toEqual([]);
}

describe('what shared code says has German', () => {
  it('of tickets at every stage, and what second line would miss of them', () => {
    everyWordHasGerman(saidOfTickets(), 60);
  });

  it('of what happened', () => {
    everyWordHasGerman(saidInTimelines(), 20);
  });

  it('of steps that are refused', () => {
    everyWordHasGerman(saidInRefusal(60, 60), 40);
  });

  it('piece by piece: each retest', () => {
    everyWordHasGerman(saidPieceByPiece(), 100);
  });
});

describe('the table', () => {
  it('holds no refusal, and no name of a step, that the machine no longer says', () => {
    const folder = new URL('../../state-machines/triage/', import.meta.url);
    const said = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .map((file) => readFileSync(new URL(file, folder), 'utf8'))
      .join();
    const parts = [...refusalPairs, ...labelPairs].flatMap(([english]) =>
      english.split(/\{\w+:\w+\}|‘|’ at/),
    );
    const fixed = parts.map((part) => part.trim().replace(/\.$/, '')).filter((part) => part.length > 3);
    expect(fixed.length).toBeGreaterThan(100);
    expect(fixed.filter((part) => !said.includes(part))).toEqual([]);
  });
});

describe('a sentence in German', () => {
  it.each(['', 'What a technician wrote.', 'Replace the cable and pray.', "Replace the cable from 'A'"])(
    'is not made up where none is known: %s',
    (text) => {
      expect(germanSentence(text)).toBeNull();
    },
  );
});

import { describe, expect, it } from 'vitest';
import { faultTable, listFigures } from '../../shared/isolation/index.ts';
import { deTerms, german } from '../../shared/message/de/index.ts';
import { english, enTerms } from '../../shared/message/en/index.ts';
import { messageText } from '../../shared/message/index.ts';
import { figureName, figureSections, sectionOf } from '../../src/web/admin/figures/figure-names.ts';
import { figureWords } from '../../src/web/admin/figures/figure-words.ts';

const paths = listFigures(faultTable).map(({ path }) => path);
const tongues = {
  en: { language: english, terms: enTerms },
  de: { language: german, terms: deTerms },
} as const;

describe('the figures of the fault model, in words', () => {
  it.each(['en', 'de'] as const)('have each a group, and a name of their own in it (%s)', (tag) => {
    const { language, terms } = tongues[tag];
    const words = figureWords[tag];
    expect(Object.keys(words.sections).sort()).toEqual(Object.keys(figureSections).sort());
    expect(paths.filter((path) => words.sections[sectionOf(path)] === undefined)).toEqual([]);
    const named = paths.map((path) => ({
      path,
      name: figureName(path, { words, terms, said: (what) => messageText(what, language, 'UTC') }),
    }));
    expect(named.filter(({ path, name }) => path === name)).toEqual([]);
    const ofGroup = named.map(({ path, name }) => `${sectionOf(path)} ${name}`);
    expect(ofGroup.filter((name, at) => ofGroup.indexOf(name) !== at)).toEqual([]);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { changeKinds } from '../shared/contract/triage-names.ts';
import { changeCatalogue } from '../shared/isolation/change-catalogue.ts';

const root = new URL('../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');

/** Every source file of the program, but for what is frozen with a version of stored data and what is generated. */
const sources = ['shared', 'state-machines', 'src']
  .flatMap((folder) =>
    readdirSync(new URL(`${folder}/`, root), { recursive: true }).map((file) => `${folder}/${String(file)}`),
  )
  .filter((path) => /\.tsx?$/.test(path) && !/\/(versions|generated)\//.test(path))
  .map((path) => ({ path, text: read(path) }));

/** The paths that DEVELOPERS.md lists to add something, item by item; an item can offer several of which one is taken. */
function listedToAdd(what: string): string[][] {
  const [, section = ''] = read('DEVELOPERS.md').split(`**${what}**`);
  const [list = ''] = section.split('\n**');
  const items = list.split(/\n(?=\d\. )/).slice(1);
  return items.map((item) => {
    const [text = ''] = item.split('\n\n');
    const named = [...text.matchAll(/`([\w./-]+\.ts)`/g)].map(([, path]) => path ?? '');
    const folder = named[0]?.replace(/[^/]*$/, '') ?? '';
    return named
      .map((path) => (path.includes('/') ? path : folder + path))
      .filter((path) => !path.endsWith('change-facts.ts'));
  });
}

/** Where a kind is asked for by its name, because what is said there is true of it alone. */
const rulesOfOneKind: Record<string, readonly string[]> = {
  // Which sources show the fault is looked at before anything is unplugged, with minutes of its own.
  otherSource: ['shared/isolation/candidates.ts', 'shared/isolation/plan-wording.ts'],
  // Which of the organisation's kinds it is says what is known of it.
  ownKind: ['state-machines/triage/changes/own.ts'],
  // Whoever declares it, or enters it late, says what it is and where, in a form of its own.
  otherChange: [
    'src/web/technician/steps/changes.tsx',
    'src/web/technician/steps/declare.tsx',
    'src/web/technician/steps/late-change.tsx',
    'src/web/technician/steps/other-change.tsx',
  ],
  // It comes last, but where the organisation's level asks for it.
  updateFirmware: ['state-machines/triage/changes/applicable.ts'],
};

describe('what DEVELOPERS.md lists for a new kind of change', () => {
  const listed = listedToAdd('a kind of change');

  it('is four files at most, all of them there', () => {
    expect(listed.length).toBeGreaterThan(1);
    expect(listed.length).toBeLessThanOrEqual(4);
    for (const path of listed.flat()) expect(sources.map((source) => source.path)).toContain(path);
  });

  it.each(changeKinds)('is all that names %s', (kind) => {
    const name = new RegExp(`'${kind}'|\\.${kind}\\b|^\\s*${kind}:`, 'm');
    const naming = sources.filter(({ text }) => name.test(text)).map(({ path }) => path);
    const others = naming.filter((path) => !listed.flat().includes(path));
    expect(others.toSorted()).toEqual([...(rulesOfOneKind[kind] ?? [])].toSorted());
    for (const choice of listed) expect(naming.filter((path) => choice.includes(path))).toHaveLength(1);
  });

  it('has each kind in the file of what it is made to', () => {
    for (const kind of changeKinds) {
      const { target } = changeCatalogue[kind];
      const [file] = listed
        .flat()
        .filter(
          (path) =>
            path.startsWith('shared/isolation/') && read(path).match(new RegExp(`^ {2}${kind}:`, 'm')),
        );
      expect(file, kind).toMatch(new RegExp(`/changes-to-${target}s(-\\w+)?\\.ts$`));
    }
  });
});

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { triageDiagram, withDiagram } from '../src/cli/readme-diagram.ts';

const root = join(import.meta.dirname, '..');
const read = (name: string): string => readFileSync(join(root, name), 'utf8');
const readme = read('README.md');
const runbook = read('docs/runbook.md');
const documents = { 'README.md': readme, 'DEVELOPERS.md': read('DEVELOPERS.md'), 'docs/runbook.md': runbook };
const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };

/** What is made by running something, and so is not in the tree; and what is named by its form. */
const elsewhere = /^(dist|out|screenshots|data)\b|[<*…]/;
const folders = ['.ci', 'docs', 'prisma', 'seed', 'shared', 'src', 'state-machines', 'tests'];
const inTree = folders.flatMap((folder) => [
  folder,
  ...readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map(
    (name) => `${folder}/${name}`,
  ),
]);
const isThere = (name: string): boolean =>
  existsSync(join(root, name)) || inTree.some((path) => `/${path}`.endsWith(`/${name.replace(/\/$/, '')}`));

/** What is in backticks or in a command, and looks like a file or a folder of ours. */
function pathsIn(text: string): string[] {
  const quoted = [...text.matchAll(/`([^`\s]+)`|\]\(([^)\s]+)\)/g)].map(
    ([, code, link]) => code ?? link ?? '',
  );
  const typed = text
    .split('\n')
    .filter((line) => line.startsWith('    '))
    .flatMap((line) => line.split(/\s+/))
    .filter((word) => folders.some((folder) => word.startsWith(`${folder}/`)));
  const isPath = (word: string) => /^[\w.-]+(\/[\w.-]+)*\/?$/.test(word);
  const isNamed = (word: string) =>
    /^(Dockerfile|LICENSE)$|\.(tsx?|cjs|js|md|yml|json|sql|prisma|txt)$/.test(word) ||
    (word.includes('/') && !/^[A-Z]/.test(word));
  return [...quoted, ...typed].filter((word) => isPath(word) && isNamed(word) && !elsewhere.test(word));
}

describe.each(Object.entries(documents))('%s', (document, text) => {
  it('names files and folders that are in the tree', () => {
    const named = pathsIn(text);
    expect(document === 'docs/runbook.md' || named.length > 2).toBe(true);
    expect(named.filter((name) => !isThere(name))).toEqual([]);
  });

  it('names commands that package.json has', () => {
    const named = [...text.matchAll(/npm (?:run (?:-s )?)?([\w:]+)/g)].map(([, name = '']) => name);
    expect(named.length).toBeGreaterThan(5);
    const own = ['ci', 'prune'];
    expect(named.filter((name) => scripts[name] === undefined && !own.includes(name))).toEqual([]);
  });
});

describe('README.md', () => {
  it('can be read in one go: 160 lines at most', () => {
    expect(readme.trimEnd().split('\n').length).toBeLessThanOrEqual(160);
  });

  it('draws the states of a ticket that the machine has (npm run readme:diagram draws them)', () => {
    expect(triageDiagram()).toContain('ready --> declared: declareChange');
    expect(readme).toBe(withDiagram(readme));
  });

  it('lists with the runbook every variable that is read from the environment, with its default', () => {
    const [, fields = ''] =
      read('src/config.ts').match(/const environment = z\.object\(\{(.*?)\n\}\);/s) ?? [];
    const variables = [...fields.matchAll(/^ {2}(\w+): (.*),$/gm)].map(([, name = '', rest = '']) => {
      const [, fallback] = rest.match(/\.default\((.*)\)$/) ?? [];
      return { name, fallback: fallback?.replaceAll(/['_]/g, '') };
    });
    expect(variables.length).toBeGreaterThan(10);
    const rows = `${readme}\n${runbook}`.match(/^\| `[A-Z].*$/gm) ?? [];
    const listed = rows.flatMap((row) => {
      const [, names = '', defaults = ''] = row.split('|');
      const fallbacks = defaults.split(',').map((each) => each.trim().replaceAll('`', ''));
      return [...names.matchAll(/`(\w+)`/g)].map(([, name], at) => ({ name, fallback: fallbacks[at] }));
    });
    expect(listed.map(({ name }) => name).sort()).toEqual(variables.map(({ name }) => name).sort());
    for (const { name, fallback } of variables) {
      const told = listed.find((each) => each.name === name)?.fallback;
      if (fallback === undefined) expect(['none', 'made on first start'], name).toContain(told);
      else if (fallback !== 'builtClient') expect(told, name).toBe(fallback);
    }
  });
});

describe('DEVELOPERS.md', () => {
  const layout = documents['DEVELOPERS.md'].split('\n').filter((line) => line.startsWith('    '));
  const named = new Set(layout.flatMap((line) => [...line.matchAll(/([\w-]+)\//g)].map(([, name]) => name)));
  const foldersIn = (parent: string): string[] =>
    readdirSync(join(root, parent), { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !['generated', 'public'].includes(entry.name))
      .map(({ name }) => name);

  it.each(['shared', 'state-machines', 'state-machines/triage', 'src', 'src/features', 'src/web'])(
    'says what every folder of %s is for',
    (parent) => {
      expect(foldersIn(parent).length).toBeGreaterThan(0);
      expect(foldersIn(parent).filter((name) => !named.has(name))).toEqual([]);
    },
  );

  it('lays out no folder that is not there', () => {
    expect([...named].filter((name) => !isThere(`${name}/`))).toEqual([]);
  });

  it('names what the code has: words of code in backticks are found there', () => {
    const words = [
      ...documents['DEVELOPERS.md'].matchAll(/`([a-z]+(?:[A-Z]\w+)+|[A-Z]\w+|[A-Z]+(?:_[A-Z]+)+)`/g),
    ];
    const sources = [
      ...inTree.filter((path) => /\.(tsx?|js|sql|prisma)$/.test(path)),
      'package.json',
      'vitest.config.ts',
    ].map(read);
    expect(words.length).toBeGreaterThan(15);
    const unknown = words
      .map(([, word = '']) => word)
      .filter((word) => !sources.some((text) => text.includes(word)));
    expect(unknown.filter((word) => !existsSync(join(root, word)))).toEqual([]);
  });
});

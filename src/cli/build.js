import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

/**
 * `node src/cli/build.js [--if-needed] [client] [server]`: builds what ships, into dist/client and dist/server. With
 * `--if-needed` it leaves alone what was built from sources of the same content. Plain JavaScript, because `npm start`
 * asks it even where nothing that builds is installed.
 */
const root = fileURLToPath(new URL('../..', import.meta.url));

/** Each becomes a file of its name in dist/server, whole in itself but for the packages that it imports. */
const programs = [
  'src/main.ts',
  'src/heavy-worker.ts',
  'src/cli/backup.ts',
  'src/cli/chain.ts',
  'src/cli/create-organisation.ts',
  'src/cli/edid.ts',
  'src/cli/rebuild-tickets.ts',
  'src/cli/recover-member.ts',
  'src/cli/restore.ts',
  'src/cli/rotate-secret.ts',
  'src/cli/verify.ts',
  'src/database/run-migrations.ts',
];

const pure = ['shared', 'state-machines', 'package-lock.json'];
const parts = {
  client: {
    sources: [...pure, 'src/web', 'vite.config.ts'],
    apart: [],
    result: 'dist/client/index.html',
    tool: 'vite',
    build: buildClient,
  },
  server: {
    sources: [...pure, 'src', 'prisma/schema.prisma'],
    apart: ['src/web', 'src/database/generated'],
    result: 'dist/server/main.js',
    tool: 'esbuild',
    build: buildServer,
  },
};

async function buildClient({ build }) {
  await build({ configFile: join(root, 'vite.config.ts') });
}

async function buildServer({ build }) {
  const generated = spawnSync(process.execPath, ['prisma/generate.js'], { cwd: root, encoding: 'utf8' });
  if (generated.status !== 0) throw new Error(`The database client could not be made.\n${generated.stderr}`);
  rmSync(join(root, 'dist/server'), { recursive: true, force: true });
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: programs,
    entryNames: '[name]',
    outdir: 'dist/server',
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20.19',
    sourcemap: true,
    metafile: true,
    logLevel: 'warning',
  });
  compareWithDependencies(metafile);
}

/** A package that is imported and not installed with the server would fail there, and later than here. */
function compareWithDependencies({ inputs }) {
  const listed = Object.keys(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).dependencies);
  const imports = Object.values(inputs).flatMap((input) => input.imports);
  const used = imports
    .filter(({ external, path }) => external && !path.startsWith('node:'))
    .map(({ path }) => path.match(/^(@[^/]+\/)?[^/]+/)?.[0] ?? path);
  const lacking = [...new Set(used)].filter((name) => !listed.includes(name));
  const idle = listed.filter((name) => !used.includes(name));
  const faults = [
    ...lacking.map((name) => `${name} is imported by the server and is not among them`),
    ...idle.map((name) => `${name} is among them and the server does not import it`),
  ];
  if (faults.length > 0) throw new Error(`"dependencies" in package.json: ${faults.join('; ')}.`);
}

function filesIn(path, apart) {
  if (apart.includes(path)) return [];
  if (!statSync(join(root, path)).isDirectory()) return [path];
  return readdirSync(join(root, path))
    .sort()
    .flatMap((name) => filesIn(`${path}/${name}`, apart));
}

/** Of names and contents, since times of files change with every copy and checkout. */
function digestOf({ sources, apart }) {
  const hash = createHash('sha256');
  for (const path of sources.flatMap((source) => filesIn(source, apart))) {
    const content = createHash('sha256')
      .update(readFileSync(join(root, path)))
      .digest('hex');
    hash.update(`${content}  ${path}\n`);
  }
  return hash.digest('hex');
}

const noteOf = (name) => join(root, `dist/${name}.sha256`);
const isBuiltFrom = (name, digest) =>
  existsSync(join(root, parts[name].result)) &&
  existsSync(noteOf(name)) &&
  readFileSync(noteOf(name), 'utf8') === digest;

async function build(name) {
  const digest = digestOf(parts[name]);
  if (onlyIfNeeded && isBuiltFrom(name, digest)) return;
  // Only now, and before anything is taken away: where nothing has to be built, no tool is needed.
  const tool = await import(parts[name].tool);
  // Not on the standard output, which belongs to the program that is run afterwards.
  console.error(`Building the ${name} …`);
  mkdirSync(join(root, 'dist'), { recursive: true });
  rmSync(noteOf(name), { force: true });
  await parts[name].build(tool);
  writeFileSync(noteOf(name), digest);
}

const { values, positionals } = parseArgs({
  options: { 'if-needed': { type: 'boolean', default: false } },
  allowPositionals: true,
});
const onlyIfNeeded = values['if-needed'];
const isToolLacking = (error) =>
  error.code === 'ERR_MODULE_NOT_FOUND' && /'(vite|esbuild)'/.test(error.message);

const wanted = positionals.length > 0 ? positionals : Object.keys(parts);
if (!wanted.every((name) => Object.hasOwn(parts, name))) {
  console.error('node src/cli/build.js [--if-needed] [client] [server]');
  process.exit(2);
}
for (const name of wanted) {
  try {
    await build(name);
  } catch (error) {
    console.error(
      isToolLacking(error)
        ? `No ${name} was built from these sources, and the packages that build it are not installed.\n` +
            'Run: npm ci && npm run build. Then npm prune --omit=dev takes away what the server does not need.'
        : error,
    );
    process.exit(1);
  }
}

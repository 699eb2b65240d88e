import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import type { BenchRow } from './bench-row.ts';

const root = resolve(import.meta.dirname, '../..');
/** What the goal says of audit, budget and protection together, in kB. */
const goalKb = 48.9;

/** What the plan asks of signal and audit (state-machines/triage/plan/known.ts). */
const plan = [
  "export { fullAudit } from './shared/audit/full-audit.ts';",
  "export { chainBudget } from './shared/signal/link-budget/index.ts';",
];
/** And what is loaded once somebody looks into an EDID (src/web/edids). */
const bench = ['compareEdids', 'decodeEdid', 'encodeEdid', 'limitEdid', 'readEdidInput', 'readEdidText'];
const withBench = [...plan, `export { ${bench.join(', ')} } from './shared/signal/edid/index.ts';`];

/** Bytes of a module of these exports with all that it needs, as the client is built: bundled, minified, gzip -9. */
async function compressedBytes(exported: readonly string[]): Promise<number> {
  const { outputFiles } = await build({
    stdin: { contents: exported.join('\n'), resolveDir: root, loader: 'ts' },
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    write: false,
  });
  return gzipSync(outputFiles[0]?.contents ?? new Uint8Array(), { level: 9 }).length;
}

async function row(name: string, exported: readonly string[]): Promise<BenchRow> {
  const kb = (await compressedBytes(exported)) / 1000;
  return {
    name,
    value: `${kb.toFixed(1)} kB`,
    baseline: `${goalKb} kB`,
    ratio: `${((100 * kb) / goalKb).toFixed(0)} % of the goal`,
  };
}

/** How much of the signal's code a phone loads, compressed, with the parts of shared/chain and messages that it needs. */
export async function benchPhone(): Promise<BenchRow[]> {
  return [
    await row('Audit, budget and protection, for the plan on the phone', plan),
    await row('The same, and what is loaded when an EDID is looked into', withBench),
  ];
}

import { readFileSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readConfig } from '../config.ts';
import { startServer } from '../start.ts';
import { readmeTables, withTables } from './readme-tables.ts';

/** Brings README's tables up to date with the code; a test fails while they are not. */
const dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-readme-'));
const readme = new URL('../../README.md', import.meta.url);
const running = await startServer(readConfig({ HALFSPLIT_DATA: dataFolder, PORT: '0', LOG_LEVEL: 'warn' }), {
  prepare: async (app) => writeFileSync(readme, withTables(readFileSync(readme, 'utf8'), readmeTables(app))),
});
await running.stop();
await rm(dataFolder, { recursive: true, force: true });

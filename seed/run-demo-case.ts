import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { readConfig } from '../src/config.ts';
import { startServer } from '../src/start.ts';
import { playCase } from './demo-case.ts';
import { plantOrganisations, plantSites } from './plant-demo.ts';
import { overHttp } from './session.ts';
import { storyClock } from './story-clock.ts';

const { values } = parseArgs({ options: { out: { type: 'string', default: 'out' } } });

/** A server of its own, on a free port and a data folder that is gone afterwards. */
const dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-case-'));
const clock = storyClock();
const running = await startServer(readConfig({ LOG_LEVEL: 'warn', PORT: '0', HALFSPLIT_DATA: dataFolder }), {
  now: clock.now,
});
let step = 0;
try {
  const transport = overHttp(running.address);
  await plantOrganisations(running.services);
  const planted = await plantSites(transport);
  const packet = await playCase({ transport, clock, out: values.out }, planted.gable, (who, what) => {
    step += 1;
    console.log(`${String(step).padStart(2)}  ${who.padEnd(11)}  ${what}`);
  });
  console.log(`Check it: unzip ${packet}, then in the bag's folder: sha256sum -c manifest-sha256.txt`);
} catch (error) {
  console.error(error);
  process.exitCode = 1;
} finally {
  await running.stop();
  await rm(dataFolder, { recursive: true, force: true });
}

import { execFileSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { largestChain } from '../../support/largest-chain.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { type DatabaseKind, databaseKinds } from '../../support/test-database.ts';
import { bodyOf, openTestTicket } from '../../support/tickets.ts';
import type { BenchRow } from '../bench-row.ts';
import { writeMixedLog } from '../log-file.ts';
import { type Crowd, startCrowd, type Target } from './crowd.ts';
import { type LoopDelay, startMeasuredServer } from './measured-server.ts';
import { writeWorstPhoto } from './worst-photo.ts';

const idleMs = 10_000;
const leastMs = 20_000;
const logBytes = 100e6;
/** What is aimed at; see the design's decision 7. */
const goals = { p99Ms: 50, maxMs: 250, times: 3 };

/**
 * How late the event loop of the server is, as it ships, while four members ask for plans of the largest chain, none of
 * which is kept yet, sixteen strangers try to sign in, one member uploads the worst photo and one a log of 100 MB; and what
 * another organisation sees of it. Beside the same server without any of that, in the same run.
 */
export async function benchLoop(): Promise<BenchRow[]> {
  execFileSync(process.execPath, ['src/cli/build.js', '--if-needed', 'server'], { stdio: 'inherit' });
  const folder = await mkdtemp(join(tmpdir(), 'bench-loop-'));
  try {
    const files = { photo: join(folder, 'worst.jpg'), log: join(folder, 'mixed.log') };
    await writeWorstPhoto(files.photo);
    await writeMixedLog(files.log, logBytes);
    const rows: BenchRow[] = [];
    for (const kind of databaseKinds()) rows.push(...(await benchOn(kind, files)));
    return rows;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function benchOn(kind: DatabaseKind, files: { photo: string; log: string }): Promise<BenchRow[]> {
  const test = await openTestApp(kind);
  const large = await openLargest(test);
  const { ticketId } = await openTestTicket(test, test.other);
  const server = await startMeasuredServer(test);
  try {
    const target: Target = { base: server.base, test, ticketId: large, files };
    const page = pageOf(server.base, ticketId, test.other.technician.accessToken);
    await page.watch(2_000);
    await server.loopDelay();
    const idlePage = await page.watch(idleMs);
    const idle = await server.loopDelay();
    const load = loadavg()[0] ?? 0;
    const crowd = startCrowd(target);
    const busyPage = await page.watch(leastMs, crowd.uploaded);
    await crowd.stop();
    const busy = await server.loopDelay();
    return rowsOf(kind, { idle, busy, idlePage, busyPage, crowd, load });
  } finally {
    await server.stop();
    await test.close();
  }
}

async function openLargest(test: TestApp): Promise<string> {
  const { dispatcher, technician } = test.home;
  const site = {
    client: 'The house of many',
    address: '1 Mill Lane',
    contact: { phone: '+44 1632 960 143' },
  };
  const { id: siteId } = bodyOf<{ id: string }>(await dispatcher.post('/sites', { body: site }), 201);
  const chain = await dispatcher.post(`/sites/${siteId}/chains`, { body: largestChain() });
  const { id: chainId } = bodyOf<{ id: string }>(chain, 201);
  const intake = { symptom: { kind: 'noPicture', perHour: 6 } };
  const body = { siteId, chainId, assigneeId: technician.id, intake };
  return bodyOf<{ id: string }>(await dispatcher.post('/tickets', { body }), 201).id;
}

/** The page of a ticket, asked for again and again with a short pause. */
const pageOf = (base: string, ticketId: string, token: string) => ({
  /** @returns how long each answer took, in ms, in order of length; over so many ms, and until then where it is later */
  watch: async (ms: number, until: Promise<unknown> = Promise.resolve()): Promise<number[]> => {
    let isOver = false;
    void Promise.all([setTimeout(ms), until]).finally(() => {
      isOver = true;
    });
    const times: number[] = [];
    while (!isOver) {
      const begun = performance.now();
      const answer = await fetch(`${base}/tickets/${ticketId}`, {
        headers: { authorization: `Bearer ${token}` },
      });
      await answer.text();
      if (answer.status !== 200) throw new Error(`a ticket's page answered ${answer.status}`);
      times.push(performance.now() - begun);
      await setTimeout(15);
    }
    return times.toSorted((one, other) => one - other);
  },
});

const at = (share: number, times: readonly number[]): number =>
  times[Math.min(times.length - 1, Math.floor(times.length * share))] ?? 0;
const ms = (value: number): string => `${value.toFixed(1)} ms`;

type Measured = {
  idle: LoopDelay;
  busy: LoopDelay;
  idlePage: number[];
  busyPage: number[];
  crowd: Crowd;
  load: number;
};

function rowsOf(kind: DatabaseKind, { idle, busy, idlePage, busyPage, crowd, load }: Measured): BenchRow[] {
  const [idleP95, busyP95] = [at(0.95, idlePage), at(0.95, busyPage)];
  const { plans, signIns, uploads } = crowd.done;
  const middle = (times: readonly number[]): string =>
    ms(
      at(
        0.5,
        times.toSorted((one, other) => one - other),
      ),
    );
  const seconds = (took: number | undefined): string =>
    took === undefined ? 'none' : `${(took / 1000).toFixed(1)} s`;
  return [
    {
      name: `loop delay, 99th percentile, ${kind}`,
      value: ms(busy.p99Ms),
      baseline: `${ms(idle.p99Ms)} idle`,
      ratio: `goal ${goals.p99Ms} ms`,
    },
    {
      name: `loop delay, longest, ${kind}`,
      value: ms(busy.maxMs),
      baseline: `${ms(idle.maxMs)} idle`,
      ratio: `goal ${goals.maxMs} ms`,
    },
    {
      name: `another organisation's page, 95th percentile of ${busyPage.length}, ${kind}`,
      value: ms(busyP95),
      baseline: `${ms(idleP95)} idle, of ${idlePage.length}`,
      ratio: `${(busyP95 / idleP95).toFixed(2)} times; goal ${goals.times}`,
    },
    {
      name: `what the others got, ${kind}`,
      value: `${plans.length} plans, half within ${middle(plans)}; ${signIns.length} sign-ins, half within ${middle(signIns)}`,
      baseline: `photo ${seconds(uploads.photo)}, log ${seconds(uploads.log)}; put off ${crowd.done.putOff}`,
      ratio: `${busy.residentMB.toFixed(0)} MB after ${idle.residentMB.toFixed(0)}; load before ${load.toFixed(1)}`,
    },
  ];
}

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import type { Case } from '../../seed/case-steps.ts';
import { playUntilEscalated } from '../../seed/demo-case.ts';
import { firm, makersDesk } from '../../seed/firm.ts';
import { plantOrganisations, plantSites } from '../../seed/plant-demo.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import { type StoryClock, storyClock } from '../../seed/story-clock.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { readConfig } from '../../src/config.ts';
import { startServer } from '../../src/start.ts';
import { deviceIn, type Look, type MemberName, openBrowser, type Size, signInOn } from './stage.ts';

/** A server on which one whole case and one with much left out wait for second line, and a real browser. */
export type CaseStage = {
  readonly base: string;
  readonly browser: Browser;
  /** The server's. */
  readonly clock: StoryClock;
  /** The demo case, to be gone on with as technician. */
  readonly play: Case;
  /** The case with things left out, which waits longer. */
  readonly bare: Ticket;
  signedIn(name: MemberName, size: Size, look?: Look): Promise<Page>;
  /** Second line of another organisation. */
  signedInElsewhere(size: Size): Promise<Page>;
  close(): Promise<void>;
};

export async function openCaseStage(): Promise<CaseStage> {
  const dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-case-'));
  const clock = storyClock();
  const config = readConfig({
    ...process.env,
    LOG_LEVEL: 'error',
    PORT: '0',
    HALFSPLIT_DATA: dataFolder,
    DATABASE_URL: undefined,
  });
  const running = await startServer(config, { now: clock.now });
  const transport = overHttp(running.address);
  await plantOrganisations(running.services);
  const planted = await plantSites(transport);
  clock.to(new Date(Date.now() - 50 * 3_600_000));
  const bare = await escalateBare(transport, planted.boat);
  const play = await playUntilEscalated({ transport, clock }, planted.gable, () => undefined);
  clock.backToReal();
  const browser = await openBrowser();
  const openPage = async (size: Size, look?: Look): Promise<Page> => {
    const context = await deviceIn(browser, running.address, size, look);
    return context.newPage();
  };
  return {
    base: running.address,
    browser,
    clock,
    play,
    bare,
    signedIn: async (name, size, look) => {
      const page = await openPage(size, look);
      await signInOn(page, name);
      return page;
    },
    signedInElsewhere: async (size) => {
      const page = await openPage(size);
      await signInOn(page, 'vesper', makersDesk.handle);
      return page;
    },
    close: async () => {
      await browser.close();
      await running.stop();
      await rm(dataFolder, { recursive: true, force: true });
    },
  };
}

/** A case in which next to nothing was done before it was handed on, and all of that is owned up to. */
async function escalateBare(
  transport: ReturnType<typeof overHttp>,
  where: { siteId: string; chainId: string },
): Promise<Ticket> {
  const dispatcher = await signIn(transport, firm.handle, 'oda@lanternrow.example');
  const technician = await signIn(transport, firm.handle, 'tuli@lanternrow.example');
  const { memberAddress } = expectStatus(await technician.get<{ memberAddress: string }>('/me'), 200);
  const { id } = expectStatus(
    await dispatcher.post<Ticket>('/tickets', {
      ...where,
      assigneeId: memberAddress,
      intake: {
        symptom: { kind: 'noPicture' },
        affectedSources: ['disc'],
        whatChanged: [{ kind: 'firmware', text: 'Receiver updated by the owner', when: 'last week' }],
      },
    }),
    201,
  );
  await technician.command(id, { type: 'reviewAudit', chainVersion: 1 });
  const { missing } = await technician.command(id, { type: 'recordAsFound', chainVersion: 1 });
  return technician.command(id, {
    type: 'escalate',
    question: 'The owner leaves tomorrow: is this update known to lose the picture?',
    waivers: [...new Set(missing.map(({ item }) => item))].map((item) => ({
      item,
      reason: 'No time on site, the owner is leaving.',
    })),
  });
}

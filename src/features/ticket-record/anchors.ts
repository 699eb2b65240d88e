import { randomUUID } from 'node:crypto';
import { link, mkdir, open, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Logger } from 'pino';
import { type BackgroundJob, repeatedly } from '../../background-job.ts';
import type { Services } from '../../services.ts';
import { everyOrganisation } from '../organisation/index.ts';
import {
  anchorFiles,
  anchorText,
  digestOfAnchor,
  type Head,
  noAnchorBefore,
  readAnchor,
  readAnchorFile,
} from './anchor-file.ts';
import type { Tenancy } from './tenancy.ts';

type Anchoring = Pick<Services, 'config' | 'database' | 'now'>;

export const anchorFolder = (dataFolder: string): string => join(dataFolder, 'anchors');

/** How often it is looked whether a day has its anchor yet. */
const lookEveryMs = 3600 * 1000;
/** Assumed: longer than any transaction that began before an anchor and was committed after it. */
const overlapMs = 3600 * 1000;

/**
 * Keeps one anchor a day (UTC) of every organisation in the data folder: the newest hash of each log that went on since
 * the one before. Whoever may write the database, and nothing else, can't cut off or replace what one of them names.
 */
export const keepAnchors = (services: Anchoring, logger: Logger): BackgroundJob =>
  repeatedly(() => writeAnchors(services), {
    everyMs: lookEveryMs,
    onError: (error) => logger.error({ err: error }, 'the heads of the logs could not be anchored'),
  });

/** Writes today's anchor of every organisation that has none yet. */
export async function writeAnchors({ config, database, now }: Anchoring): Promise<void> {
  const folder = anchorFolder(config.dataFolder);
  const madeAt = now().toISOString();
  const day = madeAt.slice(0, 10);
  for (const { orgId } of await everyOrganisation(database)) {
    const last = (await anchorFiles(folder, orgId)).at(-1);
    if (last !== undefined && last.day >= day) continue;
    const text = last === undefined ? null : await readAnchorFile(last);
    const since = text === null ? null : (readAnchor(text, config.signingKey)?.madeAt ?? null);
    const heads = await database.inTenant({ orgId, memberId: null }, (tx) =>
      headsOf(
        { tx, actor: { orgId } },
        since === null ? new Date(0) : new Date(Date.parse(since) - overlapMs),
      ),
    );
    const before = text === null ? noAnchorBefore : digestOfAnchor(text);
    const anchor = anchorText({ orgId, madeAt, before, heads }, config.signingKey);
    await writeOnce(join(folder, orgId), `${day}.txt`, anchor);
  }
}

/** The newest event of each log that went on since then. */
async function headsOf({ tx, actor }: Tenancy, since: Date): Promise<Head[]> {
  return tx.$queryRaw<Head[]>`
    select distinct on (ticket_id) ticket_id as "ticketId", sequence, hash from ticket_event
    where org_id = ${actor.orgId}::uuid and at >= ${since}::timestamptz
    order by ticket_id, sequence desc`;
}

/** Whole or not at all; one that another process was faster to write stays. */
async function writeOnce(folder: string, name: string, text: string): Promise<void> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const draft = join(folder, `${name}.${randomUUID()}`);
  const file = await open(draft, 'wx', 0o600);
  try {
    await file.writeFile(text);
    await file.sync();
    await link(draft, join(folder, name)).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
  } finally {
    await file.close();
    await rm(draft, { force: true });
  }
}

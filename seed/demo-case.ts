import { createWriteStream } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Chain, Finding } from '../shared/contract/chain.ts';
import type { PlanReply } from '../shared/contract/plan.ts';
import type { Ticket } from '../shared/contract/ticket.ts';
import { boundCase, type Case, type Say } from './case-steps.ts';
import { drawnPhoto, processorLog } from './demo-evidence.ts';
import { firm, makersDesk } from './firm.ts';
import { followPlan, type StoryFault } from './follow-plan.ts';
import { inEnglish } from './in-english.ts';
import { expectStatus, signIn, type Transport } from './session.ts';
import type { StoryClock } from './story-clock.ts';

/** Where a case is played: the API, and the server's clock. */
type Stage = { transport: Transport; clock: StoryClock };
type Where = { siteId: string; chainId: string };

/** The cable in the wall has too little margin for what it carries. */
const fault: StoryFault = { linkId: 'C5', everyMin: 20 };

/**
 * Plays one case over HTTP as dispatcher, technician and second line, and leaves the packet in a folder.
 * Its hours pass on the server's clock, which the story moves.
 * @param out the folder that the packet goes into
 * @param say takes one line a step
 * @returns the path of the packet's zip
 * @throws when any step does not go as it has to
 */
export async function playCase(
  { out, ...stage }: Stage & { out: string },
  where: Where,
  say: Say,
): Promise<string> {
  const play = await playUntilEscalated(stage, where, say);
  await secondLine(play);
  return fetchPacket(play, stage.transport, out);
}

/** The first part of the case: from the call until it waits for second line. */
export async function playUntilEscalated({ transport, clock }: Stage, where: Where, say: Say): Promise<Case> {
  const dispatcher = await signIn(transport, firm.handle, 'oda@lanternrow.example');
  const technician = await signIn(transport, firm.handle, 'brask@lanternrow.example');
  const support = await signIn(transport, firm.handle, 'pim@lanternrow.example');
  const start = new Date(Date.now() - 10 * 3_600_000);
  clock.to(start);
  const { memberAddress } = expectStatus(await technician.get<{ memberAddress: string }>('/me'), 200);
  const opened = expectStatus(
    await dispatcher.post<Ticket>('/tickets', {
      ...where,
      priority: 'high',
      assigneeId: memberAddress,
      intake: {
        reporter: { name: 'Edda Corrowin', phone: '+353 1 555 0142', relation: 'owner' },
        symptom: { kind: 'dropOuts', perHour: 3, lastsS: 4, pattern: { kind: 'random' } },
        affectedSources: ['disc', 'stream'],
        affectedDisplays: ['projector'],
        affectedContent: 'Films in 2160p; never in the menus.',
        content: 'highRateOnly',
        since: 'about three weeks',
        workedBefore: true,
        triedOnPhone: 'Receiver switched off and on: came back after twenty minutes.',
      },
    }),
    201,
  );
  say('dispatcher', `opens ticket no. ${opened.number}: drop-outs, three an hour`);
  const play = boundCase({ ticketId: opened.id, start, clock, dispatcher, technician, support, say });

  await baseline(play, where.chainId);
  await reproduce(play);
  await isolate(play, where.chainId);
  await escalateIncomplete(play);
  await collectEvidence(play);
  await play.tell({ type: 'escalate', question }, 'escalates: the case is complete, packet 1 is built');
  return play;
}

async function baseline(
  { technician, dispatcher, ticketId, say, tell }: Case,
  chainId: string,
): Promise<void> {
  const { findings } = expectStatus(
    await technician.get<{ findings: Finding[] }>(
      `/chains/${chainId}/audit?duringTriage=true&symptom=dropOuts`,
    ),
    200,
  );
  say(
    'technician',
    `reads the audit: ${findings.length} findings, first: ${findings[0]?.text.text ?? 'none'}`,
  );
  await dispatcher.command(ticketId, {
    type: 'answerWhatChanged',
    answers: [
      { kind: 'buildingWork', text: 'A shelf was put up on the projector wall', when: 'a month ago' },
    ],
  });
  await tell({ type: 'reviewAudit', chainVersion: 1 });
  await tell({ type: 'recordAsFound', chainVersion: 1 }, 'records the chain as found');
}

async function reproduce({ tell, watch, occurrence }: Case): Promise<void> {
  await watch(0, 60, {}, [() => occurrence(11), () => occurrence(29), () => occurrence(52)]);
  await tell({ type: 'acceptReproduction' }, 'has seen it three times in 60 minutes');
}

async function isolate(play: Case, chainId: string): Promise<void> {
  const { chain } = expectStatus(await play.technician.get<{ chain: Chain }>(`/chains/${chainId}`), 200);
  const { plan } = await followPlan(play, chain, fault);
  const [suspect] = plan.suspects;
  if (suspect?.place?.kind !== 'link' || suspect.place.linkId !== fault.linkId) {
    throw new Error(`The plan ends at ${suspect?.component}, and the fault is in ${fault.linkId}.`);
  }
  const chance = (suspect.probability * 100).toFixed(1);
  play.say('plan', `It is ${inEnglish(suspect.name)} (${chance} %). ${strongest(suspect)}`);
}

/** What weighed most, in decibans. */
function strongest({ because }: PlanReply['suspects'][number]): string {
  const [most] = because.toSorted((a, b) => b.decibans - a.decibans);
  return most === undefined
    ? ''
    : `What weighed most: ${inEnglish(most.text)} (${most.decibans.toFixed(0)} decibans).`;
}

const question =
  'With less to carry the fault stays away, with the full rate it is back: the cable in the wall. Before the wall is opened: can output A of the processor be the cause as well?';

async function escalateIncomplete({ technician, ticketId, say }: Case): Promise<void> {
  const refusal = await technician.refusedCommand(ticketId, 'case-incomplete', {
    type: 'escalate',
    question,
  });
  say(
    'technician',
    `tries to escalate and is refused; missing: ${(refusal.missing ?? []).map((one) => one.item).join(', ')}`,
  );
}

async function collectEvidence(play: Case): Promise<void> {
  const { read, attach, moment, later, cameAt, say } = play;
  const levels = {
    disc: '2.04',
    stream: '2.04',
    games: '9.1',
    receiver: '1.8.1',
    processor: '3.9',
    projector: '1.31',
    panel: '0.9',
  };
  for (const [deviceId, level] of Object.entries(levels))
    await read({ deviceId }, { kind: 'firmware', level });
  await read(
    { deviceId: 'projector' },
    { kind: 'settings', values: { 'Input signal': 'enhanced', 'Colour space': 'auto' } },
  );
  for (const shows of ['sourceEnd', 'sinkEnd', 'label'] as const) {
    const photo = await drawnPhoto(`C5 ${shows}`);
    await attach(
      { kind: 'photo', tie: { linkId: 'C5', shows }, description: `C5, ${shows}` },
      photo,
      `c5-${shows}.jpg`,
    );
  }
  const until = later(2);
  const span = { from: moment(0).toISOString(), to: moment(until).toISOString() };
  const log = processorLog(moment(0), moment(until), cameAt.map(moment));
  await attach(
    { kind: 'log', tie: { deviceId: 'processor' }, description: 'Processor log of the day', span },
    log,
    'processor.log',
  );
  say('technician', 'reads firmware and settings, photographs both ends and the label, takes the log');
}

async function secondLine({ technician, support, ticketId, say, tell, read }: Case): Promise<void> {
  await support.command(ticketId, { type: 'takeCase' });
  const asked = await support.command(ticketId, {
    type: 'askForMore',
    requests: [{ item: 'settings', text: 'Which output level is set for output A?' }],
  });
  const request = asked.triage.requests.at(-1);
  say('second line', `takes the case and asks: ${request?.text}`);
  await read({ deviceId: 'processor' }, { kind: 'settings', values: { 'Output A level': 'standard' } });
  await technician.command(ticketId, {
    type: 'answerRequest',
    requestId: request?.id,
    text: 'Standard, as it was delivered.',
  });
  await tell({ type: 'resubmit' }, 'reads it, answers and sends packet 2');
  await support.command(ticketId, {
    type: 'acceptCase',
    finding: 'Cable C5: 12 m of uncertified copper in the wall. Replace by an optical one in the conduit.',
    place: { kind: 'link', linkId: 'C5' },
  });
  say('second line', 'accepts with the finding: cable C5');
}

async function fetchPacket(
  { support, ticketId, say }: Case,
  transport: Transport,
  out: string,
): Promise<string> {
  const packets = expectStatus(
    await support.get<{ items: { id: string; version: number }[] }>(`/tickets/${ticketId}/packets`),
    200,
  );
  const latest = packets.items.toSorted((a, b) => b.version - a.version)[0];
  if (latest === undefined) throw new Error('there is no packet');
  const maker = await signIn(transport, makersDesk.handle, 'vesper@quellordesk.example');
  const { memberAddress } = expectStatus(await maker.get<{ memberAddress: string }>('/me'), 200);
  expectStatus(await support.post(`/packets/${latest.id}/grants`, { memberAddress }), 201);
  expectStatus(await maker.get(`/packets/${latest.id}`), 200);
  expectStatus(await maker.get(`/tickets/${ticketId}`), 404);
  say('second line', "shows the packet to the maker's service desk, which can read that and nothing else");
  await mkdir(out, { recursive: true });
  const path = join(out, `case-packet-${latest.version}.zip`);
  const download = await support.download(`/packets/${latest.id}/download`);
  await pipeline(Readable.fromWeb(download as never), createWriteStream(path));
  say('second line', `downloads packet ${latest.version}: ${path}`);
  return path;
}

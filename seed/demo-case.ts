import { createWriteStream } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Finding } from '../shared/contract/chain.ts';
import type { Ticket } from '../shared/contract/ticket.ts';
import { boundCase, type Case, type Say } from './case-steps.ts';
import { drawnPhoto, processorLog } from './demo-evidence.ts';
import { firm, makersDesk } from './firm.ts';
import { expectStatus, signIn, type Transport } from './session.ts';
import type { StoryClock } from './story-clock.ts';

/** Where a case is played: the API, the server's clock, and the folder that the packet goes into. */
type Stage = { transport: Transport; clock: StoryClock; out: string };

/**
 * Plays one case over HTTP as dispatcher, technician and second line, and leaves the packet in a folder.
 * Its hours pass on the server's clock, which the story moves.
 * @param say takes one line a step
 * @returns the path of the packet's zip
 * @throws when any step does not go as it has to
 */
export async function playCase(
  stage: Stage,
  where: { siteId: string; chainId: string },
  say: Say,
): Promise<string> {
  const { transport, clock } = stage;
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
        symptom: { kind: 'dropOuts', perHour: 3, lastsS: 4 },
        affectedSources: ['disc', 'stream'],
        affectedContent: 'Films in 2160p; never in the menus.',
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
  await locateSide(play);
  await substitute(play);
  await escalateIncomplete(play);
  await collectEvidence(play);
  return secondLine(play, stage);
}

async function baseline(
  { technician, dispatcher, ticketId, say, tell }: Case,
  chainId: string,
): Promise<void> {
  const { findings } = expectStatus(
    await technician.get<{ findings: Finding[] }>(`/chains/${chainId}/audit?duringTriage=true&symptom=dropOuts`),
    200,
  );
  say('technician', `reads the audit: ${findings.length} findings, first: ${findings[0]?.text ?? 'none'}`);
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

async function locateSide({ tell, watch, occurrence }: Case): Promise<void> {
  await watch(65, 95, { menuDeviceId: 'processor' }, [() => occurrence(83, { menu: 'vanished' })]);
  await tell(
    { type: 'concludeSide', deviceId: 'processor' },
    "puts up the processor's menu; it vanished too: the fault is on the output side",
  );
  await tell({ type: 'beginSubstitution' });
}

async function substitute({ technician, ticketId, tell, watch, occurrence, read, say }: Case): Promise<void> {
  const ticket = await tell(
    {
      type: 'declareChange',
      kind: 'temporaryCable',
      target: { kind: 'link', linkId: 'C5' },
      expected: 'If the cable in the wall is the cause, no drop-out in two hours.',
    },
    'declares one change: a temporary cable across the floor instead of C5',
  );
  const changeId = ticket.triage.changes.at(-1)?.id ?? '';
  const refusal = await technician.refusedCommand(ticketId, 'change-open', {
    type: 'declareChange',
    kind: 'reseat',
    target: { kind: 'link', linkId: 'C4' },
    expected: 'While I am here anyway.',
  });
  say('technician', `tries a second change and is refused: ${refusal.detail}`);
  const processorSettings = {
    'Input bandwidth': 'automatic',
    'Output bandwidth': 'automatic',
    'Output rate': 'follow source',
  };
  await read(
    { deviceId: 'processor', changeId },
    { kind: 'settings', values: processorSettings, phase: 'before' },
  );
  await tell({ type: 'applyChange' }, 'lays and tapes down the cable, out of the walkway');
  await read(
    { deviceId: 'processor', changeId },
    { kind: 'settings', values: processorSettings, phase: 'after' },
  );
  await watch(110, 230, {}, []);
  const judged = await tell({ type: 'judgeRetest' });
  const judgement = judged.triage.changes.at(-1)?.judgement;
  if (judgement?.verdict !== 'cleared' || !judgement.attributable) {
    throw new Error(`expected a cleared, attributable retest, got ${JSON.stringify(judgement)}`);
  }
  const risk = ((judgement.riskOfBeingFooled ?? 1) * 100).toFixed(1);
  say('technician', `watched 120 quiet minutes: cleared, chance of being fooled ${risk} %`);
  await tell({ type: 'restoreChange' }, 'puts the cable in the wall back');
  await watch(240, 275, {}, [() => occurrence(262)]);
  say('technician', 'and the fault is back after 22 minutes: the suspect is confirmed');
}

const question =
  'The temporary cable clears it. Before a wall is opened: can output A of the processor be the cause as well?';

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
  const { read, attach, moment, say } = play;
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
  const span = { from: moment(0).toISOString(), to: moment(280).toISOString() };
  const log = processorLog(moment(0), moment(280), [11, 29, 52, 83, 262].map(moment));
  await attach(
    { kind: 'log', tie: { deviceId: 'processor' }, description: 'Processor log of the day', span },
    log,
    'processor.log',
  );
  say('technician', 'reads firmware and settings, photographs both ends and the label, takes the log');
}

async function secondLine(play: Case, stage: Stage): Promise<string> {
  const { technician, support, ticketId, say, tell, read } = play;
  await tell({ type: 'escalate', question }, 'escalates: the case is complete, packet 1 is built');
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
  return fetchPacket(play, stage);
}

async function fetchPacket({ support, ticketId, say }: Case, { transport, out }: Stage): Promise<string> {
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

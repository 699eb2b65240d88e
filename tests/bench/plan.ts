import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Chain } from '../../shared/contract/chain.ts';
import { organisationSettings } from '../../shared/contract/organisation.ts';
import type { PlanReply } from '../../shared/contract/plan.ts';
import * as today from '../../state-machines/index.ts';
import {
  cable,
  chainOf,
  display,
  matrixSwitch,
  opticalCable,
  processor,
  receiver,
  source,
  splitter,
} from '../chain/build-chain.ts';
import { TriageCase } from '../state-machines/triage/triage-case.ts';
import { opening } from '../state-machines/triage/triage-events.ts';
import type { BenchRow } from './bench-row.ts';

/** The program's own code, as it stands here or stood at another commit. */
type Program = Pick<typeof today, 'planTicket' | 'knownOfChain'>;

const settings = organisationSettings.parse({});
const symptom = { ...opening.symptom, kind: 'noPicture', perHour: 6 } as const;

/** Six devices and six cables: twelve components. */
const twelveComponents = (): Chain =>
  chainOf(
    [
      source('player'),
      source('streamer'),
      matrixSwitch('switch'),
      receiver('receiver'),
      processor('processor'),
      display('projector'),
    ],
    [
      cable('player.out1', 'switch.in1'),
      cable('streamer.out1', 'switch.in2'),
      cable('switch.out1', 'receiver.in1'),
      cable('switch.out2', 'receiver.in2'),
      cable('receiver.out1', 'processor.in1'),
      opticalCable('processor.out1', 'projector.in1'),
    ],
  );

/** The largest chain that the contract takes: 200 devices and 392 cables, a ladder of splitters and switches. */
function largest(): Chain {
  const rungs = Array.from({ length: 66 }, (_, at) => at);
  const devices = rungs.flatMap((at) => [
    splitter(`split${at}`),
    receiver(`left${at}`),
    matrixSwitch(`join${at}`),
  ]);
  const within = rungs.flatMap((at) => [
    cable(`split${at}.out1`, `left${at}.in1`),
    cable(`split${at}.out2`, `join${at}.in2`),
    cable(`split${at}.out3`, `join${at}.in3`),
    cable(`left${at}.out1`, `join${at}.in1`),
    cable(`left${at}.out2`, `join${at}.in4`),
  ]);
  const onward = rungs.slice(1).map((at) => cable(`join${at - 1}.out1`, `split${at}.in1`));
  const ends = [cable('player.out1', 'split0.in1'), cable('join65.out1', 'projector.in1')];
  return chainOf(
    [source('player'), ...devices, display('projector')],
    [...ends, ...onward, ...within].slice(0, 392),
  );
}

/** A plan from scratch on the phone or the server: what the chain says is known, nothing of the plan is. */
function planOf(program: Program, chain: Chain): () => PlanReply {
  const ticket = new TriageCase({ chain, opening: { symptom } }).reproduced();
  const known = {
    ...program.knownOfChain(chain, symptom, settings, []),
    intake: { affectedSources: [], affectedDisplays: [], content: 'notKnown' as const, workedBefore: null },
    facts: [],
    today: ticket.now.slice(0, 10),
  } satisfies today.PlanRequest['known'];
  const here = { kit: null, people: 2, refused: [] } as const;
  const { snapshot, now } = ticket;
  return () => program.planTicket(snapshot, { known, chainVersion: 3, here, now });
}

/** Milliseconds of processor time that one run takes: whoever else is on the machine does not count. */
function processorMs(run: () => unknown): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Median milliseconds of each, taken in turns after some to warm up, so that what slows one down slows the other. */
function medianMs(plans: readonly (() => unknown)[], rounds: number): number[] {
  const times = plans.map((): number[] => []);
  for (let round = -Math.ceil(rounds / 5); round < rounds; round += 1)
    for (const [at, plan] of plans.entries()) {
      const tookMs = processorMs(plan);
      if (round >= 0) times[at]?.push(tookMs);
    }
  return times.map((each) => each.toSorted((a, b) => a - b)[Math.floor(rounds / 2)] ?? 0);
}

/** The program at another commit, checked out beside this one; null where there is none such. */
async function programAt(ref: string): Promise<{ program: Program; remove(): void } | null> {
  const folder = mkdtempSync(join(tmpdir(), 'halfsplit-plan-'));
  const git = (...words: string[]) => execFileSync('git', words, { stdio: 'pipe' });
  const remove = () => {
    git('worktree', 'remove', '--force', folder);
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    git('worktree', 'add', '--detach', folder, ref);
  } catch (error) {
    console.error(`${ref} can't be checked out: ${String(error)}`);
    return null;
  }
  symlinkSync(resolve('node_modules'), join(folder, 'node_modules'));
  const program: Program = await import(pathToFileURL(join(folder, 'state-machines/index.ts')).href);
  return { program, remove };
}

/**
 * A plan from scratch, at twelve components and at the most that a chain can have, beside that of another commit in the
 * same run: `--against=REF`, the commit before where nothing is said.
 */
export async function benchPlan(): Promise<BenchRow[]> {
  const ref =
    process.argv.find((word) => word.startsWith('--against='))?.slice('--against='.length) ?? 'HEAD~1';
  const before = await programAt(ref);
  const rows = [
    { name: 'plan at 12 components', chain: twelveComponents(), rounds: 60 },
    { name: 'plan at 200 devices and 392 cables', chain: largest(), rounds: 5 },
  ].map(({ name, chain, rounds }): BenchRow => {
    const here = planOf(today, chain);
    const plans = [here, ...(before === null ? [] : [planOf(before.program, chain)])];
    const [hereMs = 0, beforeMs = 0] = medianMs(plans, rounds);
    return {
      name: here().cutShort === null ? name : `${name}, the best of some`,
      value: `${hereMs.toFixed(1)} ms`,
      baseline: before === null ? 'nothing to compare with' : `${beforeMs.toFixed(1)} ms at ${ref}`,
      ratio: before === null ? '' : `${(hereMs / beforeMs).toFixed(2)} times`,
    };
  });
  before?.remove();
  return rows;
}

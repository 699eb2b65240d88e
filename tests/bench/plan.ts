import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Chain } from '../../shared/contract/chain.ts';
import { organisationSettings } from '../../shared/contract/organisation.ts';
import type { PlanReply } from '../../shared/contract/plan.ts';
import { mostWork, WorkMeter } from '../../shared/isolation/index.ts';
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
} from '../chain/build-chain.ts';
import { TriageCase } from '../state-machines/triage/triage-case.ts';
import { opening } from '../state-machines/triage/triage-events.ts';
import { largestChain } from '../support/largest-chain.ts';
import { argument } from './argument.ts';
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

/** A plan from scratch on the phone or the server: what the chain says is known, nothing of the plan is. */
function planOf(program: Program, chain: Chain, meter = new WorkMeter()): () => PlanReply {
  const ticket = new TriageCase({ chain, opening: { symptom } }).reproduced();
  const known = {
    ...program.knownOfChain(chain, symptom, settings, []),
    intake: { affectedSources: [], affectedDisplays: [], content: 'notKnown' as const, workedBefore: null },
    facts: [],
    today: ticket.now.slice(0, 10),
  } satisfies today.PlanRequest['known'];
  const here = { kit: null, people: 2, refused: [] } as const;
  const { snapshot, now } = ticket;
  return () => program.planTicket(snapshot, { known, chainVersion: 3, here, now, meter });
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
 * same run: `--against=REF`, the commit before where nothing is said. The first is made by code that nothing has run
 * yet, as on a phone that was just opened; the others by code that the engine has compiled.
 */
export async function benchPlan(): Promise<BenchRow[]> {
  const ref = argument('against') ?? 'HEAD~1';
  const before = await programAt(ref);
  const sizes = [
    { name: 'plan at 12 components', chain: twelveComponents(), rounds: 300 },
    { name: 'plan at 200 devices and 392 cables', chain: largestChain(), rounds: 5 },
  ];
  const row = (name: string, [hereMs = 0, beforeMs = 0]: number[], work = ''): BenchRow => ({
    name,
    value: `${hereMs.toFixed(1)} ms${work}`,
    baseline: before === null ? 'nothing to compare with' : `${beforeMs.toFixed(1)} ms at ${ref}`,
    ratio: before === null ? '' : `${(hereMs / beforeMs).toFixed(2)} times`,
  });
  const rows = sizes.flatMap(({ name, chain, rounds }) => {
    const here = planOf(today, chain);
    const plans = [here, ...(before === null ? [] : [planOf(before.program, chain)])];
    const firstMs = plans.map(processorMs);
    const laterMs = medianMs(plans, rounds);
    const meter = new WorkMeter();
    planOf(today, chain, meter)();
    const { cutShort } = here();
    return [
      row(`${name}, the first ever`, firstMs),
      row(
        cutShort === null ? name : `${name}, the best of some`,
        laterMs,
        `, ${meter.units} of ${mostWork} units of work`,
      ),
    ];
  });
  before?.remove();
  return rows;
}

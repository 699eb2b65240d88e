import { downstreamOf, findLink } from '../shared/chain/graph.ts';
import type { Chain, Place } from '../shared/contract/chain.ts';
import type { Offer, PlannedTestView, PlanReply } from '../shared/contract/plan.ts';
import { filledIn } from '../state-machines/index.ts';
import type { Case } from './case-steps.ts';
import { inEnglish } from './in-english.ts';
import { expectStatus } from './session.ts';

/** What is wrong in the story: a cable without enough margin, which nobody in it knows. */
export type StoryFault = { linkId: string; everyMin: number };

/** Steps after which a plan that leads nowhere is given up. */
const mostSteps = 20;

/**
 * Does what the plan says, test by test, until it names a culprit that was seen to return; the story's fault decides
 * what is seen.
 *
 * @returns the plan at the end, and the change that showed the culprit
 * @throws when the plan leads nowhere, or to something else than the fault
 */
export async function followPlan(
  play: Case,
  chain: Chain,
  fault: StoryFault,
): Promise<{ plan: PlanReply; changeId: string }> {
  for (let step = 0; step < mostSteps; step += 1) {
    const plan = await readPlan(play);
    const [offer] = plan.offers;
    const type = offer?.steps[0]?.type;
    if (type === 'nameCulprit') return { plan, changeId: await shownBy(play) };
    if (type === 'startWatch' && offer?.test === null) await seeItReturn(play, fault);
    else if (offer == null || offer.test === null)
      throw new Error(`The plan leads nowhere: ${inEnglish(plan.sentence)}`);
    else await doTest(play, chain, fault, { plan, offer, test: offer.test });
  }
  throw new Error(`No culprit after ${mostSteps} steps.`);
}

export async function readPlan({ technician, ticketId }: Case): Promise<PlanReply> {
  return expectStatus(await technician.get<PlanReply>(`/tickets/${ticketId}/plan`), 200);
}

async function doTest(
  play: Case,
  chain: Chain,
  fault: StoryFault,
  { plan, offer, test }: { plan: PlanReply; offer: Offer; test: PlannedTestView },
): Promise<void> {
  const { tell, say } = play;
  say('plan', inEnglish(plan.sentence));
  const reason = 'Another menu tells more than a change would now.';
  for (const command of filledIn(offer, { reason }).slice(0, -1)) await tell(command);
  if (test.kind === 'menu' && test.target.kind === 'device') {
    await watchMenu(play, chain, fault, test.target.deviceId);
  } else await makeChange(play, chain, fault, test);
}

async function watchMenu(play: Case, chain: Chain, fault: StoryFault, deviceId: string): Promise<void> {
  const { tell, watch, occurrence, say, later } = play;
  const sink = findLink(chain, fault.linkId)?.to.deviceId ?? '';
  const feedsIt = downstreamOf(chain, deviceId).has(sink);
  const menu = feedsIt ? 'vanished' : 'stayed';
  const from = later(3);
  await watch(from, from + fault.everyMin + 2, { menuDeviceId: deviceId }, [
    () => occurrence(from + fault.everyMin, { menu }),
  ]);
  await tell({ type: 'concludeSide', deviceId });
  say(
    'technician',
    `sees the fault come with that menu up: it ${menu === 'stayed' ? 'stays' : 'vanishes too'}`,
  );
}

/** A little bandwidth less and the cable carries it; without the cable there is nothing to fail. */
function takesItAway({ kind, target }: PlannedTestView, fault: StoryFault, chain: Chain): boolean {
  const link = findLink(chain, fault.linkId);
  if (link === undefined) return false;
  const atLink = target.kind === 'link' && target.linkId === fault.linkId;
  const before = (place: Place): boolean =>
    place.kind === 'device' &&
    (place.deviceId === link.from.deviceId || downstreamOf(chain, place.deviceId).has(link.from.deviceId));
  return (
    (atLink && (kind === 'temporaryCable' || kind === 'replaceCable')) ||
    (kind === 'limitOutputBandwidth' && before(target)) ||
    (kind === 'moveProcessorToDisplay' && before(target))
  );
}

async function makeChange(play: Case, chain: Chain, fault: StoryFault, test: PlannedTestView): Promise<void> {
  const { tell, watch, occurrence, say, later } = play;
  const setting = settingOf(test);
  const settings = setting === null ? [] : [setting];
  const likeliest = test.outcomes[0]?.likeliest;
  const expected = `If it is ${likeliest == null ? 'here' : inEnglish(likeliest)}, the fault stays away.`;
  const declared = await tell({
    type: 'declareChange',
    kind: test.kind,
    target: test.target,
    expected,
    settings,
  });
  const changeId = declared.triage.changes.at(-1)?.id ?? '';
  await refuseSecond(play, test);
  const deviceId = setting?.deviceId ?? 'processor';
  await readSettings(play, { deviceId, changeId }, chain, 'before', {});
  await tell({ type: 'applyChange' }, `makes it, and nothing else: ${inEnglish(test.text)}`);
  await readSettings(
    play,
    { deviceId, changeId },
    chain,
    'after',
    setting === null ? {} : { [setting.key]: setting.to },
  );
  const cleared = takesItAway(test, fault, chain);
  const needMin = Math.ceil((await readPlan(play)).watchMin ?? fault.everyMin) + 1;
  const from = later(test.minutes.setup);
  await watch(
    from,
    from + (cleared ? needMin : fault.everyMin + 5),
    {},
    cleared ? [] : [() => occurrence(from + fault.everyMin)],
  );
  const { triage } = await tell({ type: 'judgeRetest' });
  const judgement = triage.changes.at(-1)?.judgement;
  if (judgement?.verdict !== (cleared ? 'cleared' : 'persists') || !judgement.attributable) {
    throw new Error(`expected an attributable retest, got ${JSON.stringify(judgement)}`);
  }
  const risk = ((judgement.riskOfBeingFooled ?? 1) * 100).toFixed(1);
  say(
    'technician',
    cleared
      ? `watches ${needMin} quiet minutes: cleared, chance of being fooled ${risk} %`
      : 'sees the fault come: that was not it',
  );
  await tell({ type: 'restoreChange' }, 'puts it back');
}

/** One change at a time: a second one is refused, whoever asks. */
async function refuseSecond({ technician, ticketId, say }: Case, test: PlannedTestView): Promise<void> {
  const refusal = await technician.refusedCommand(ticketId, 'change-open', {
    type: 'declareChange',
    kind: test.kind,
    target: test.target,
    expected: 'While I am here anyway.',
  });
  say('technician', `tries a second change and is refused: ${refusal.detail}`);
}

async function seeItReturn(play: Case, fault: StoryFault): Promise<void> {
  const { watch, occurrence, say, later } = play;
  const from = later(5);
  await watch(from, from + fault.everyMin + 5, {}, [() => occurrence(from + fault.everyMin)]);
  say('technician', `and the fault is back after ${fault.everyMin} minutes: the suspect is confirmed`);
}

async function shownBy({ technician, ticketId }: Case): Promise<string> {
  const { triage } = expectStatus(
    await technician.get<{ triage: { changes: { id: string; judgement: { verdict: string } | null }[] } }>(
      `/tickets/${ticketId}`,
    ),
    200,
  );
  const change = triage.changes.findLast(({ judgement }) => judgement?.verdict === 'cleared');
  if (change === undefined) throw new Error('The plan names a culprit that no change has shown.');
  return change.id;
}

type Setting = { deviceId: string; key: string; to: string };

/** The one setting that a change of settings declares. */
function settingOf({ kind, target }: PlannedTestView): Setting | null {
  const deviceId = target.kind === 'device' || target.kind === 'port' ? target.deviceId : null;
  if (deviceId === null) return null;
  if (kind === 'limitOutputBandwidth') return { deviceId, key: 'Output bandwidth', to: '9 Gbit/s' };
  if (kind === 'limitInputBandwidth') return { deviceId, key: 'Input bandwidth', to: '9 Gbit/s' };
  return null;
}

async function readSettings(
  { read }: Case,
  tie: { deviceId: string; changeId: string },
  chain: Chain,
  phase: 'before' | 'after',
  changed: Record<string, string>,
): Promise<void> {
  const settings = chain.devices.find(({ id }) => id === tie.deviceId)?.settings ?? {};
  if (Object.keys(settings).length === 0) return;
  await read(tie, { kind: 'settings', values: { ...settings, ...changed }, phase });
}

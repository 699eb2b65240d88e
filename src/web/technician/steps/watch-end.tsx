import { useMemo } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { TicketCommand } from '../../../../shared/contract/commands.ts';
import type { Watch } from '../../../../shared/contract/triage.ts';
import {
  baselineWatches,
  occurrencesIn,
  occurrencesOf,
  openChange,
  watchesFor,
} from '../../../../state-machines/triage/record.ts';
import { judgementSoFar } from '../../../../state-machines/triage/rules/changes.ts';
import { Button } from '../../parts/button.tsx';
import { triageAddress } from '../common/triage-addresses.ts';
import { caseWords } from './case-words.ts';
import { menuAnswerWords } from './menu-answer-words.ts';
import { deviceWords } from './sides.tsx';
import { stepWords } from './step-words.ts';
import { watchWords } from './watch-words.ts';
import type { Work } from './work.ts';

type Way = { label: string; commands: readonly TicketCommand[]; to: string | null };
const end: TicketCommand = { type: 'endWatch' };

/** Where a watch that has said all it can leads to, by the one tap that ends it; null where that is still a question. */
export function EndInto({ work, watch }: { work: Work; watch: Watch }) {
  const { route } = useLocation();
  const way = useMemo(() => wayOn(work, watch), [work.ticket.sequence, watch.occurrences, watch.tries]);
  if (way === null) return null;
  const take = async () => {
    if ((await work.sendInOrder(way.commands)) && way.to !== null) route(way.to);
  };
  return (
    <Button kind="primary" large onClick={() => void take()}>
      {watchWords().endAnd(way.label)}
    </Button>
  );
}

function wayOn(work: Work, watch: Watch): Way | null {
  const way = wayFrom(work, watch);
  return way !== null && work.takes(way.commands) ? way : null;
}

function wayFrom(work: Work, watch: Watch): Way | null {
  switch (watch.purpose) {
    case 'reproduce': {
      const seen = occurrencesIn(baselineWatches(work.ticket.triage)).length;
      const t = watchWords();
      return {
        label: t.enough(t.seen(seen)),
        commands: [end, { type: 'acceptReproduction' }],
        to: null,
      };
    }
    case 'side':
      return sideWay(work, watch);
    case 'retest':
      return verdictWay(work);
    case 'confirm':
      return occurrencesOf(watch).length === 0
        ? null
        : { label: caseWords().nameIt, commands: [end], to: triageAddress(work.ticket.id, 'culprit') };
    case 'verify':
      return null;
  }
}

/** What the menu did, where it did the same each time. */
function sideWay(work: Work, { menuDeviceId }: Watch): Way | null {
  const deviceId = menuDeviceId ?? '';
  const watches = watchesFor(work.ticket.triage, 'side').filter((each) => each.menuDeviceId === deviceId);
  const answers = new Set(occurrencesIn(watches).map(({ menu }) => menu));
  if (answers.size !== 1) return null;
  const says = answers.has('stayed') ? 'input' : 'output';
  const label = menuAnswerWords(work.ticket.triage.symptom).concludeTitle[says](deviceWords(work, deviceId));
  return { label, commands: [end, { type: 'concludeSide', deviceId }], to: null };
}

function verdictWay(work: Work): Way | null {
  const ended = work.after(end)?.triage;
  const change = ended === undefined ? null : openChange(ended);
  if (ended === undefined || change === null) return null;
  const { verdict, attributable } = judgementSoFar(ended, change);
  // What says nothing, or can't be laid to the change, is read before it is put down.
  if (verdict === 'inconclusive' || !attributable) return null;
  return {
    label: stepWords().judge[verdict],
    commands: [end, { type: 'judgeRetest', override: null }],
    to: null,
  };
}

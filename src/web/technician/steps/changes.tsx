import { useLocation } from 'preact-iso';
import { tableOf } from '../../../../shared/isolation/overrides.ts';
import { testKey } from '../../../../shared/isolation/test-record.ts';
import { applicableChangesOf } from '../../../../state-machines/triage/changes/applicable.ts';
import type { ApplicableChange } from '../../../../state-machines/triage/changes/described.ts';
import { openChange } from '../../../../state-machines/triage/record.ts';
import { whyNoMenuDevice } from '../../../../state-machines/triage/segment.ts';
import { paths } from '../../api/paths.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { List, ListLink } from '../../parts/card.tsx';
import { Badge } from '../../parts/notice.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { useDocument } from '../../store/documents.ts';
import { changeWords } from '../../words/change-words.ts';
import { lengthOfTime } from '../../words/times.ts';
import { placeWords } from '../common/place-words.ts';
import { declareAddress, triageAddress } from '../common/triage-addresses.ts';
import { TicketPage } from './page.tsx';
import { stepWords } from './step-words.ts';
import { usePlan } from './use-plan.ts';
import { triageWords } from './words.ts';
import { type Work, watchFromNow } from './work.ts';

/** Everything that can be done next apart from what the plan says. */
export function ChangesScreen({ ticketId = '' }: { ticketId?: string }) {
  return <TicketPage ticketId={ticketId}>{(work) => <Changes work={work} />}</TicketPage>;
}

function Changes({ work }: { work: Work }) {
  const t = stepWords();
  const { id, state, triage } = work.ticket;
  const settings = useDocument(paths.organisation).body?.settings;
  const table = settings === undefined ? undefined : tableOf(settings.faultModel);
  const changes =
    state === 'locateSide' ? [] : applicableChangesOf(triage, { table, ownChanges: settings?.ownChanges });
  const [first] = changes;
  // Said before the form is filled in: one change at a time.
  const refusal =
    openChange(triage) === null || first === undefined
      ? null
      : work.refusalOf({
          type: 'declareChange',
          kind: first.kind,
          target: first.target,
          detail: '',
          expected: t.expectationPlain,
          settings: [],
          ownKindId: first.own?.id ?? null,
          mayStay: false,
        });
  return (
    <Screen title={state === 'locateSide' ? t.chooseMenu : t.chooseTitle}>
      {refusal !== null && <Refusal problem={refusal} />}
      {work.refusal !== null && <Refusal problem={work.refusal} />}
      {state === 'locateSide' && <Menus work={work} />}
      {state !== 'locateSide' && refusal === null && <p>{changes.length === 0 ? t.none : t.chooseLead}</p>}
      {refusal === null && state === 'substitute.ready' && <LikelyFirst work={work} changes={changes} />}
      {state === 'substitute.ready' && <BackToMenus work={work} />}
      <div>
        <LinkButton href={triageAddress(id)}>{triageWords().toQuestion}</LinkButton>
      </div>
    </Screen>
  );
}

/** The likely ones by the plan's own figures, and all others behind one tap; all at once where there are no figures. */
function LikelyFirst({ work, changes }: { work: Work; changes: readonly ApplicableChange[] }) {
  const t = stepWords();
  const { likely, isMaking } = usePlan(work);
  const byKey = new Map(changes.map((change) => [testKey(change.kind, change.target, change.own), change]));
  const first = likely.flatMap((key) => byKey.get(key) ?? []).filter(({ tried }) => !tried);
  const others = changes.filter((change) => !first.includes(change));
  if (isMaking) return <p class="question-to-come">{triageWords().working}</p>;
  return (
    <>
      <ChangeList work={work} changes={first.length === 0 ? changes : first} />
      {first.length > 0 && others.length > 0 && (
        <details>
          <summary>
            <h2>{t.allOthers(others.length)}</h2>
          </summary>
          <ChangeList work={work} changes={others} />
        </details>
      )}
      <List>
        <ListLink href={declareAddress(work.ticket.id, { kind: 'otherChange', target: { kind: 'chain' } })}>
          <strong>{t.other}</strong>
          <span>{t.otherLead}</span>
        </ListLink>
      </List>
    </>
  );
}

function ChangeList({ work, changes }: { work: Work; changes: readonly ApplicableChange[] }) {
  const t = stepWords();
  return (
    <List>
      {changes.map((change) => (
        <ListLink
          key={testKey(change.kind, change.target, change.own)}
          href={declareAddress(work.ticket.id, { ...change, ownKindId: change.own?.id ?? null })}
        >
          <strong>{changeWords(change)}</strong>
          <span>{placeWords(work.chain, change.target)}</span>
          <span class="row">
            <span class="soft">{lengthOfTime(change.setupMin + change.restoreMin)}</span>
            {change.own !== null && <Badge>{t.addedByFirm}</Badge>}
            {change.tried && <Badge>{t.tried}</Badge>}
          </span>
        </ListLink>
      ))}
    </List>
  );
}

function BackToMenus({ work }: { work: Work }) {
  const t = stepWords();
  const { route } = useLocation();
  const goBack = async () => {
    if (await work.send({ type: 'locateSideAgain', reason: t.backReason }))
      route(triageAddress(work.ticket.id), true);
  };
  return (
    <section class="stack">
      <h2>{t.menusToo}</h2>
      <Button onClick={() => void goBack()}>{t.backToMenus}</Button>
    </section>
  );
}

function Menus({ work }: { work: Work }) {
  const t = stepWords();
  const { route } = useLocation();
  const devices = work.chain.devices.filter(({ id }) => whyNoMenuDevice(work.chain, id) === null);
  if (devices.length === 0) return <p>{t.noMenu}</p>;
  const start = async (deviceId: string) => {
    if (await work.send(watchFromNow(work, null, deviceId))) route(triageAddress(work.ticket.id), true);
  };
  return (
    <>
      {devices.map(({ id, name }) => (
        <Button key={id} large onClick={() => void start(id)}>
          {t.menuTitle(name)}
        </Button>
      ))}
    </>
  );
}

import type { ComponentChildren } from 'preact';
import { findPort } from '../../../../shared/chain/look-up.ts';
import { bitRateGbps } from '../../../../shared/chain/signal-mode.ts';
import type { SignalMode } from '../../../../shared/contract/chain.ts';
import type { LookSent } from '../../../../shared/contract/look.ts';
import type { Offer } from '../../../../shared/contract/plan.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { SelectField } from '../../parts/field.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { inWords } from '../../words/sentence.tsx';
import { placeWords } from '../common/place-words.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { lookWords } from './look-words.ts';
import { Question } from './question.tsx';
import { useReading } from './reading.tsx';
import { WithoutSide } from './without-side.tsx';
import type { Work } from './work.ts';

/** What an offer asks to look at; null where it asks for something else. */
export function lookIn(offer: Offer | undefined): Partial<LookSent> | null {
  const [step] = offer?.steps ?? [];
  return step?.type === 'recordLook' ? ((step as { what?: Partial<LookSent> }).what ?? null) : null;
}

type Asking<Kind extends LookSent['kind']> = Extract<LookSent, { kind: Kind }>;
type Shown = { work: Work; offer: Offer; what: Partial<LookSent> };

/** One thing to look at: nothing is changed by it. */
export function LookQuestion({ work, offer, what }: Shown) {
  const t = lookWords();
  const device = placeWords(work.chain, { kind: 'device', deviceId: what.deviceId ?? '' });
  const send = (seen: object) =>
    void work.send({ type: 'recordLook', what: { ...what, ...seen } as LookSent, evidenceId: null });
  const about = { work, offer };
  switch (what.kind) {
    case 'signal':
      return <SignalQuestion {...about} title={t.readTitle(device)} what={what as Asking<'signal'>} />;
    case 'menu':
      return <MenuTrial {...about} title={t.menuTitle(device)} onSeen={send} />;
    case 'portMode':
      return <PortQuestion {...about} what={what as Asking<'portMode'>} onSeen={send} />;
    default:
      return (
        <Asked {...about} title={t.witnessTitle(device)}>
          {(['shows', 'doesNotShow', 'cannotSay'] as const).map((answer) => (
            <Button key={answer} large onClick={() => send({ answer })}>
              {t[answer]}
            </Button>
          ))}
        </Asked>
      );
  }
}

/** What to look at and why, the answers below, and the ways around it. */
function Asked({
  work,
  offer,
  title,
  form,
  children,
}: {
  work: Work;
  offer: Offer;
  title: string;
  form?: ComponentChildren;
  children: ComponentChildren;
}) {
  return (
    <Question
      work={work}
      title={title}
      answers={
        <>
          {children}
          <WithoutSide work={work} />
          <LinkButton href={triageAddress(work.ticket.id, 'changes')}>{lookWords().menuInstead}</LinkButton>
        </>
      }
    >
      <p class="to-do">{inWords(offer.text)}</p>
      {offer.why !== null && <p class="soft">{inWords(offer.why)}</p>}
      {form}
    </Question>
  );
}

function SignalQuestion({
  work,
  offer,
  title,
  what,
}: {
  work: Work;
  offer: Offer;
  title: string;
  what: Asking<'signal'>;
}) {
  const { fields, buttons } = useReading(work, what);
  return (
    <Asked work={work} offer={offer} title={title} form={fields}>
      {buttons}
    </Asked>
  );
}

type YesOrNo = 'yes' | 'no' | 'unknown';
type Trial = { survives: YesOrNo; keepsFormat: YesOrNo };

function MenuTrial({
  work,
  offer,
  title,
  onSeen,
}: {
  work: Work;
  offer: Offer;
  title: string;
  onSeen: (seen: object) => void;
}) {
  const t = lookWords();
  const [{ survives, keepsFormat }, write, forget] = useDraftForm<Trial>(
    `menu trial ${work.ticket.id} ${offer.key}`,
    { survives: 'unknown', keepsFormat: 'unknown' },
  );
  const options = (yes: string, no: string) => [
    { value: 'unknown' as const, label: t.notTold },
    { value: 'yes' as const, label: yes },
    { value: 'no' as const, label: no },
  ];
  return (
    <Asked
      work={work}
      offer={offer}
      title={title}
      form={
        <>
          <SelectField
            label={t.survives}
            options={options(t.stays, t.goes)}
            value={survives}
            onChoose={(chosen) => write({ survives: chosen })}
          />
          <SelectField
            label={t.keepsFormat}
            options={options(t.same, t.changes)}
            value={keepsFormat}
            onChoose={(chosen) => write({ keepsFormat: chosen })}
          />
        </>
      }
    >
      <Button
        kind="primary"
        large
        onClick={() => {
          onSeen({ survivesLossOfInput: survives, keepsFormat });
          void forget();
        }}
      >
        {t.keep}
      </Button>
    </Asked>
  );
}

/** What ports can usually be set to; a socket also has the highest that it can do. */
const usualModes: readonly SignalMode[] = [
  { kind: 'tmds', maxCharacterRateMHz: 300 },
  { kind: 'tmds', maxCharacterRateMHz: 600 },
  { kind: 'frl', lanes: 4, gbpsPerLane: 6 },
  { kind: 'frl', lanes: 4, gbpsPerLane: 10 },
];

function PortQuestion({
  work,
  offer,
  what,
  onSeen,
}: {
  work: Work;
  offer: Offer;
  what: Asking<'portMode'>;
  onSeen: (seen: object) => void;
}) {
  const t = lookWords();
  const { deviceId, portId } = what;
  const highest = findPort(work.chain, { deviceId, portId })?.highestMode;
  const lower = usualModes.filter(
    (mode) => highest !== undefined && bitRateGbps(mode) < bitRateGbps(highest),
  );
  const modes = [...lower, ...(highest === undefined ? [] : [highest])];
  return (
    <Asked
      work={work}
      offer={offer}
      title={t.portTitle(placeWords(work.chain, { kind: 'port', deviceId, portId }))}
    >
      {modes.map((mode) => (
        <Button key={JSON.stringify(mode)} large onClick={() => onSeen({ found: { kind: 'set', mode } })}>
          {`${t.setTo} ${t.gbps(bitRateGbps(mode))}`}
        </Button>
      ))}
      {(['automatic', 'nothingToSet'] as const).map((kind) => (
        <Button key={kind} large onClick={() => onSeen({ found: { kind } })}>
          {t[kind]}
        </Button>
      ))}
    </Asked>
  );
}

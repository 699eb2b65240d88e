import { longest } from '../../../../shared/contract/limits.ts';
import type { Site, SiteInput } from '../../../../shared/contract/site.ts';
import { hazardKinds } from '../../../../shared/contract/site-names.ts';
import { Button } from '../../parts/button.tsx';
import { faultAt } from '../../parts/fault-at.ts';
import { Field, TextField } from '../../parts/field.tsx';
import { type Sending, SendingResult } from '../../parts/sending.tsx';
import { Ticks } from '../../parts/tick.tsx';
import { Wipe } from '../../parts/wipe.tsx';
import { useDraft } from '../../store/use-draft.ts';
import { terms } from '../../words/terms.ts';
import { placeWords } from './words.ts';

export const emptySite: SiteInput = {
  client: '',
  address: '',
  contact: { name: null, phone: null, email: null, hours: '' },
  accessNotes: '',
  travelNotes: '',
  travelMin: null,
  hazards: [],
  timeZone: null,
};
/** What of a site is written by people. */
export const inputOf = ({
  client,
  address,
  contact,
  accessNotes,
  travelNotes,
  travelMin,
  hazards,
  timeZone,
}: Site): SiteInput => ({
  client,
  address,
  contact,
  accessNotes,
  travelNotes,
  travelMin,
  hazards,
  timeZone,
});

const orNull = (text: string): string | null => (text.trim() === '' ? null : text);

/** A client's place: who, where, how to get in, and what to take care of there. */
export function SiteForm({
  name,
  begin,
  label,
  sending,
  onSend,
}: {
  /** What is typed is kept under it until it is sent. */
  name: string;
  begin: SiteInput;
  label: string;
  sending: Sending;
  /** @returns whether it was saved */
  onSend: (site: SiteInput) => Promise<boolean>;
}) {
  const t = placeWords();
  const { draft, change, clear } = useDraft<Partial<SiteInput>>(name, {});
  const site = { ...begin, ...draft };
  const contact = (part: Partial<SiteInput['contact']>) => change({ contact: { ...site.contact, ...part } });
  const fault = (pointer: string) => faultAt(sending.problem, pointer);
  return (
    <form
      class="stack place-form"
      data-main
      onSubmit={(event) => {
        event.preventDefault();
        void onSend(site).then((isSaved) => (isSaved ? clear() : undefined));
      }}
    >
      <Field
        label={t.client}
        required
        maxLength={longest.line}
        error={fault('/client')}
        value={site.client}
        onInput={({ currentTarget }) => change({ client: currentTarget.value })}
      />
      <Field
        label={t.address}
        required
        maxLength={longest.address}
        error={fault('/address')}
        value={site.address}
        onInput={({ currentTarget }) => change({ address: currentTarget.value })}
      />
      <div class="three">
        <Field
          label={t.contactName}
          optional
          error={fault('/contact/name')}
          value={site.contact.name ?? ''}
          onInput={({ currentTarget }) => contact({ name: orNull(currentTarget.value) })}
        />
        <Field
          label={t.phone}
          optional
          type="tel"
          error={fault('/contact/phone')}
          value={site.contact.phone ?? ''}
          onInput={({ currentTarget }) => contact({ phone: orNull(currentTarget.value) })}
        />
        <Field
          label={t.email}
          optional
          type="email"
          error={fault('/contact/email')}
          value={site.contact.email ?? ''}
          onInput={({ currentTarget }) => contact({ email: orNull(currentTarget.value) })}
        />
      </div>
      <Field
        label={t.hours}
        optional
        maxLength={longest.line}
        error={fault('/contact/hours')}
        value={site.contact.hours}
        onInput={({ currentTarget }) => contact({ hours: currentTarget.value })}
      />
      <TextField
        label={t.access}
        optional
        error={fault('/accessNotes')}
        value={site.accessNotes}
        onInput={({ currentTarget }) => change({ accessNotes: currentTarget.value })}
      />
      <TextField
        label={t.travel}
        optional
        error={fault('/travelNotes')}
        value={site.travelNotes}
        onInput={({ currentTarget }) => change({ travelNotes: currentTarget.value })}
      />
      <Field
        label={t.travelMin}
        hint={t.travelMinHint}
        optional
        type="number"
        inputMode="numeric"
        min={0}
        max={1440}
        error={fault('/travelMin')}
        value={site.travelMin ?? ''}
        onInput={({ currentTarget }) =>
          change({ travelMin: currentTarget.value === '' ? null : Math.round(currentTarget.valueAsNumber) })
        }
      />
      <Ticks
        inRow
        label={t.hazards}
        options={hazardKinds.map((value) => ({ value, label: terms().hazard[value] }))}
        values={site.hazards.map(({ kind }) => kind)}
        onChange={(kinds) =>
          change({
            hazards: kinds.map((kind) => site.hazards.find((one) => one.kind === kind) ?? { kind, text: '' }),
          })
        }
      />
      {site.hazards.map((hazard, index) => (
        <Field
          key={`${hazard.kind}${index}`}
          label={t.hazardText(terms().hazard[hazard.kind])}
          value={hazard.text}
          onInput={({ currentTarget }) =>
            change({
              hazards: site.hazards.map((one) =>
                one === hazard ? { ...one, text: currentTarget.value } : one,
              ),
            })
          }
        />
      ))}
      <Field
        label={t.zone}
        optional
        placeholder="Europe/Dublin"
        error={fault('/timeZone')}
        value={site.timeZone ?? ''}
        onInput={({ currentTarget }) => change({ timeZone: orNull(currentTarget.value) })}
      />
      <SendingResult sending={sending} />
      <div class="row">
        <Button type="submit" kind="primary" disabled={sending.isBusy}>
          {label}
        </Button>
        <Wipe draft={draft} empty={{}} onWipe={clear} onUndo={change} />
      </div>
    </form>
  );
}

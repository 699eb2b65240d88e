import type { Place } from '../../../shared/contract/chain.ts';
import { Button } from '../parts/button.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { placeWord } from '../place/place-words.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { actionWords } from './action-words.ts';
import type { FormProperties } from './form-properties.ts';

/** The finding, and the place it is about. */
export function AcceptForm({ facts, send, isBusy }: FormProperties) {
  const t = actionWords();
  const { ticket, chain } = facts;
  const [draft, change, forget] = useDraftForm(`accept ${ticket.id}`, { finding: '', place: '' });
  const places: Place[] = [
    ...chain.links.map(({ id }): Place => ({ kind: 'link', linkId: id })),
    ...chain.devices.map(({ id }): Place => ({ kind: 'device', deviceId: id })),
    ...chain.devices.flatMap(({ id, ports }) =>
      ports.map((port): Place => ({ kind: 'port', deviceId: id, portId: port.id })),
    ),
  ];
  const chosen = places.find((place) => JSON.stringify(place) === draft.place) ?? null;
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void send({ type: 'acceptCase', finding: draft.finding.trim(), place: chosen }).then((isAccepted) =>
          isAccepted ? forget() : undefined,
        );
      }}
    >
      <SelectField
        label={t.wherePlace}
        value={chosen === null ? '' : draft.place}
        onChoose={(place) => change({ place })}
        options={[
          { value: '', label: t.noOnePlace },
          ...places.map((place) => ({ value: JSON.stringify(place), label: placeWord(chain, place) })),
        ]}
      />
      <TextField
        label={t.finding}
        hint={t.findingHint}
        rows={5}
        required
        value={draft.finding}
        onInput={({ currentTarget }) => change({ finding: currentTarget.value })}
      />
      <Button type="submit" kind="primary" disabled={isBusy || draft.finding.trim() === ''}>
        {t.acceptWithFinding}
      </Button>
    </form>
  );
}

/** Back to the technician, with what has to be better. */
export function HandBackForm({ facts, send, isBusy }: FormProperties) {
  const t = actionWords();
  const [draft, change, forget] = useDraftForm(`hand back ${facts.ticket.id}`, { reason: '' });
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void send({ type: 'handBack', reason: draft.reason.trim() }).then((isAccepted) =>
          isAccepted ? forget() : undefined,
        );
      }}
    >
      <TextField
        label={t.whyBack}
        rows={4}
        required
        value={draft.reason}
        onInput={({ currentTarget }) => change({ reason: currentTarget.value })}
      />
      <Button type="submit" kind="danger" disabled={isBusy || draft.reason.trim() === ''}>
        {t.handItBack}
      </Button>
    </form>
  );
}

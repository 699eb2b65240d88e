import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { PacketGrant } from '../../../shared/contract/packet.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Field } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { refresh, useDocument } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { dayAndTime } from '../words/times.ts';
import { packetWords } from './packet-words.ts';
import { Table } from './table.tsx';

/** To whom outside a packet is shown, and the form that shows it to one more. */
export function PacketGrants({ packetId, zone }: { packetId: string; zone: string }) {
  const t = packetWords();
  const path = paths.packetGrants(packetId);
  const grants = useDocument(path);
  const sending = useSending();
  const [{ address }, write, forget] = useDraftForm(`grant ${packetId}`, { address: '' });
  const [done, setDone] = useState<string | null>(null);
  const send = async (to: string, what: string, body?: unknown) => {
    setDone(null);
    const answer = await sending.send('POST', to, body === undefined ? {} : { body });
    if (answer === null) return false;
    await refresh(path);
    setDone(what);
    return true;
  };
  const count = grants.body?.items.filter(({ revokedAt }) => revokedAt === null).length ?? 0;
  return (
    <details class="not-printed">
      <summary>{t.shownTo(count)}</summary>
      <div class="stack">
        <DocumentView document={grants}>
          {({ items }) =>
            items.length === 0 ? null : (
              <Table
                caption={t.shownTo(count)}
                heads={[t.address, t.since, t.opened, t.state]}
                rows={items.map((grant) => [
                  <span key="address" class="figures">
                    {grant.memberAddress}
                  </span>,
                  `${dayAndTime(grant.grantedAt, zone)}, ${grant.grantedByName}`,
                  grant.firstOpenedAt === null ? t.notOpened : dayAndTime(grant.firstOpenedAt, zone),
                  <GrantState
                    key="state"
                    grant={grant}
                    zone={zone}
                    isBusy={sending.isBusy}
                    onRevoke={() => void send(`/grants/${grant.id}/revoke`, t.revoked)}
                  />,
                ])}
              />
            )
          }
        </DocumentView>
        <form
          class="stack"
          onSubmit={(event) => {
            event.preventDefault();
            void send(addressOf(addresses.packetGrants, { id: packetId }), t.granted, {
              memberAddress: address.trim(),
            }).then((isAccepted) => (isAccepted ? forget() : undefined));
          }}
        >
          <Field
            label={t.addressLabel}
            hint={t.addressHint}
            value={address}
            onInput={({ currentTarget }) => write({ address: currentTarget.value })}
          />
          <div>
            <Button type="submit" disabled={sending.isBusy || address.trim() === ''}>
              {t.show}
            </Button>
          </div>
        </form>
        {done !== null && (
          <Notice tone="good" announce>
            {done}
          </Notice>
        )}
        <SendingResult sending={sending} />
      </div>
    </details>
  );
}

function GrantState({
  grant,
  zone,
  isBusy,
  onRevoke,
}: {
  grant: PacketGrant;
  zone: string;
  isBusy: boolean;
  onRevoke: () => void;
}) {
  const t = packetWords();
  if (grant.revokedAt !== null) return <span>{t.endedAt(dayAndTime(grant.revokedAt, zone))}</span>;
  return (
    <Button kind="danger" disabled={isBusy} onClick={onRevoke}>
      {t.revoke}
    </Button>
  );
}

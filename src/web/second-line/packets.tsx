import { typed } from '../parts/typed.tsx';
import './second-line.css';
import { useState } from 'preact/hooks';
import { paths } from '../api/paths.ts';
import { session } from '../api/session.ts';
import { Card, List, ListLink } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Field } from '../parts/field.tsx';
import { Screen } from '../parts/screen.tsx';
import { useDocument } from '../store/documents.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { CheckResult, useChecking } from './packet-check.tsx';
import { packetWords } from './packet-words.ts';

/** Packets from outside: those that others show to me, and any zip from this device, to be checked. */
export function PacketsScreen() {
  const t = packetWords();
  const [checking, check] = useChecking();
  const [name, setName] = useState('');
  const me = useDocument(paths.me).body;
  const isSupport = session.value?.member.role === 'support';
  return (
    <Screen title={t.title}>
      {isSupport && <Granted />}
      <Card title={t.checkAny}>
        <p>{t.checkAnyHint}</p>
        <Field
          label={t.zipFile}
          type="file"
          accept=".zip,application/zip"
          onChange={({ currentTarget }) => {
            const file = currentTarget.files?.[0];
            if (file === undefined) return;
            setName(file.name);
            void check(file);
          }}
        />
        {name !== '' && checking.kind !== 'idle' && <h3>{name}</h3>}
        <CheckResult checking={checking} />
      </Card>
      {isSupport && me !== null && (
        <Card title={t.myAddress}>
          <p>{t.myAddressHint}</p>
          <p class="figures">{me.memberAddress}</p>
        </Card>
      )}
    </Screen>
  );
}

function Granted() {
  const t = packetWords();
  const granted = useDocument(paths.grantedPackets);
  const zone = useZone(null);
  return (
    <Card title={t.shownToMe}>
      <DocumentView document={granted}>
        {({ items }) => (
          <>
            {items.length === 0 && <p>{t.noneShown}</p>}
            <List>
              {items.map(
                ({ grantId, packetId, organisationName, ticketNumber, version, question, grantedAt }) => (
                  <ListLink key={grantId} href={`/app/packets/${packetId}`}>
                    <strong>{t.from(organisationName, ticketNumber, version)}</strong>
                    <span>{typed(question)}</span>
                    <span class="soft">{dayAndTime(grantedAt, zone)}</span>
                  </ListLink>
                ),
              )}
            </List>
          </>
        )}
      </DocumentView>
    </Card>
  );
}

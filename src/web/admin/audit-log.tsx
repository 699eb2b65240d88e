import { useState } from 'preact/hooks';
import type { AuditEntry } from '../../../shared/contract/audit-log.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Card, List } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { SelectField } from '../parts/field.tsx';
import { useDocument } from '../store/documents.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { auditLogWords, entrySaid } from './audit-log-words.ts';
import { SectionScreen } from './section-screen.tsx';
import { adminWords } from './words.ts';

/** Who did what in the firm, newest first: of everybody, or of one member. */
export function AuditLogScreen() {
  const t = auditLogWords();
  const [memberId, setMemberId] = useState('');
  const members = useDocument(paths.members).body?.items ?? [];
  const options = [
    { value: '', label: t.everybody },
    ...members.map(({ id, name }) => ({ value: id, label: name })),
  ];
  return (
    <SectionScreen title={adminWords().auditLog}>
      <p>{t.lead}</p>
      <SelectField label={t.whose} options={options} value={memberId} onChoose={setMemberId} />
      <Card>
        <EntriesFrom key={memberId} memberId={memberId} />
      </Card>
    </SectionScreen>
  );
}

/** A page of entries, and those that follow it once they are asked for. */
function EntriesFrom({ memberId, cursor }: { memberId: string; cursor?: string }) {
  const t = auditLogWords();
  const zone = useZone(null);
  const entries = useDocument(paths.auditLog({ memberId, cursor }));
  const [goesOn, setGoesOn] = useState(false);
  return (
    <DocumentView document={entries}>
      {({ items, next }) => (
        <>
          {items.length === 0 && <p>{t.none}</p>}
          <List>
            {items.map((entry) => (
              <Entry key={entry.id} entry={entry} zone={zone} />
            ))}
          </List>
          {next !== null && goesOn && <EntriesFrom memberId={memberId} cursor={next} />}
          {next !== null && !goesOn && <Button onClick={() => setGoesOn(true)}>{t.older}</Button>}
        </>
      )}
    </DocumentView>
  );
}

function Entry({ entry, zone }: { entry: AuditEntry; zone: string }) {
  const t = auditLogWords();
  return (
    <li class="audit-entry">
      <span dir="auto">{entrySaid(entry)}</span>
      <span class="soft">
        {dayAndTime(entry.at, zone)}
        {entry.kind === 'textErased' && (
          <>
            {' · '}
            <a href={`/app/tickets/${entry.aboutId}`}>{t.toTicket}</a>
          </>
        )}
        {entry.kind === 'clientExported' && (
          <>
            {' · '}
            <a href={`/app/sites/${entry.aboutId}`}>{t.toSite}</a>
          </>
        )}
      </span>
    </li>
  );
}

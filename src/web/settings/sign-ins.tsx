import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { Session } from '../../../shared/contract/people.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Card, List } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Badge } from '../parts/notice.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { refresh, useDocument } from '../store/documents.ts';
import { wordsOf } from '../words/language.ts';
import { dayAndTime } from '../words/times.ts';

const t = wordsOf({
  en: {
    title: 'Where you are signed in',
    unknown: 'A device that did not say what it is',
    here: 'here',
    since: (since: string, last: string) => `Since ${since}, last used ${last}`,
    end: 'Sign out there',
    endOf: (device: string) => `Sign out there: ${device}`,
    endOthers: 'Sign out everywhere else',
  },
  de: {
    title: 'Wo du angemeldet bist',
    unknown: 'Ein Gerät, das nicht sagt, was es ist',
    here: 'hier',
    since: (since, last) => `Seit ${since}, zuletzt benutzt ${last}`,
    end: 'Dort abmelden',
    endOf: (device) => `Dort abmelden: ${device}`,
    endOthers: 'Überall sonst abmelden',
  },
});

/** Of what a browser says that it is, the part about the device, which stands in brackets (RFC 9110, section 10.1.5). */
const deviceOf = ({ device }: Session): string | null => device?.match(/\(([^)]+)\)/)?.[1] ?? device;

/** The member's sign-ins, each of which they can end from here: a phone that was left somewhere, for one. */
export function SignIns() {
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const words = t();
  const sessions = useDocument(paths.ownSessions);
  const sending = useSending();
  const post = async (path: string): Promise<void> => {
    await sending.send('POST', path);
    await refresh(paths.ownSessions);
  };
  return (
    <Card title={words.title}>
      <DocumentView document={sessions}>
        {({ items }) => (
          <>
            <List>
              {items.map((session) => (
                <li key={session.id} class="stack">
                  <div>
                    <strong>{deviceOf(session) ?? words.unknown}</strong>{' '}
                    {session.isThis && <Badge tone="good">{words.here}</Badge>}
                    <br />
                    {words.since(dayAndTime(session.startedAt, zone), dayAndTime(session.seenAt, zone))}
                  </div>
                  {!session.isThis && (
                    <div>
                      <Button
                        aria-label={words.endOf(deviceOf(session) ?? words.unknown)}
                        disabled={sending.isBusy}
                        onClick={() => void post(addressOf(addresses.endOwnSession, { id: session.id }))}
                      >
                        {words.end}
                      </Button>
                    </div>
                  )}
                </li>
              ))}
            </List>
            <SendingResult sending={sending} />
            {items.some(({ isThis }) => !isThis) && (
              <div>
                <Button disabled={sending.isBusy} onClick={() => void post(addresses.endOtherSessions)}>
                  {words.endOthers}
                </Button>
              </div>
            )}
          </>
        )}
      </DocumentView>
    </Card>
  );
}

import { Diary } from '../diary/diary.tsx';
import { diaryWords } from '../diary/words.ts';
import { LinkButton } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Screen } from '../parts/screen.tsx';
import { useTicket } from '../projection/use-ticket.ts';
import { useZone } from '../words/zone.ts';
import { visitAddress } from './common/addresses.ts';
import { Part } from './part.tsx';
import './technician.css';

/** The client's diary of a visit's ticket. */
export function DiaryScreen({ ticketId = '' }: { ticketId?: string }) {
  const t = diaryWords();
  const { server, projection } = useTicket(ticketId, 'shown');
  const zone = useZone((projection?.ticket ?? server.body)?.siteId ?? null);
  return (
    <Screen title={t.title}>
      <div>
        <LinkButton href={visitAddress(ticketId)}>{t.toVisit}</LinkButton>
      </div>
      <DocumentView document={server}>
        {(body) => (
          <Part id="diary" title={t.reported}>
            <Diary ticket={projection?.ticket ?? body} zone={zone} />
          </Part>
        )}
      </DocumentView>
    </Screen>
  );
}

import { messageKey } from '../../../shared/message/same.ts';
import { paths } from '../api/paths.ts';
import { session } from '../api/session.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { ErasedSince } from '../parts/erased-since.tsx';
import { Badge } from '../parts/notice.tsx';
import { useDocument } from '../store/documents.ts';
import { inWords } from '../words/sentence.tsx';
import { dayAndTime, number } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { PacketFiles } from './packet-files.tsx';
import { PacketGrants } from './packet-grants.tsx';
import { packetWords } from './packet-words.ts';
import { caseWords } from './words.ts';

/** The packets of a case: to download, to check, and to show to another organisation. */
export function PacketsPart({ facts: { ticket, zone } }: { facts: CaseFacts }) {
  const t = packetWords();
  const packets = useDocument(paths.packets(ticket.id));
  const role = session.value?.member.role;
  return (
    <CasePart
      id="packets"
      title={caseWords().packets}
      isFolded
      digest={packets.body !== null && <Badge>{number(packets.body.items.length)}</Badge>}
    >
      <DocumentView document={packets}>
        {({ items }) => (
          <>
            {items.length === 0 && <p>{t.none}</p>}
            {items.map(({ id, version, createdAt, createdByName, news, sizeBytes, erasedSince }) => (
              <article class="stack" key={id} aria-labelledby={`packet-${id}`}>
                <h3 id={`packet-${id}`}>{t.version(version)}</h3>
                <p class="soft">
                  {`${dayAndTime(createdAt, zone)}, ${createdByName}, ${number(sizeBytes / 1024, 0)} KiB`}
                </p>
                <ErasedSince packet={{ erasedSince }} />
                {news.length > 0 && (
                  <ul>
                    {news.map((one) => (
                      <li key={messageKey(one)}>{inWords(one)}</li>
                    ))}
                  </ul>
                )}
                <PacketFiles packetId={id} name={`case-${ticket.number}-version-${version}`} />
                {(role === 'support' || role === 'admin') && <PacketGrants packetId={id} zone={zone} />}
              </article>
            ))}
          </>
        )}
      </DocumentView>
    </CasePart>
  );
}

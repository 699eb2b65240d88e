import { mostOwnChanges } from '../../../shared/contract/limits.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import { Button } from '../parts/button.tsx';
import { Card } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { OwnChangeFields } from './own-change-fields.tsx';
import { ownChangeWords } from './own-changes-words.ts';
import { SaveRow } from './save-row.tsx';
import { SectionScreen } from './section-screen.tsx';
import { useSectionDraft, useSettings } from './use-settings.ts';
import { adminWords } from './words.ts';

/** The kinds of change that the firm adds to the built-in ones. */
export function OwnChangesScreen() {
  const settings = useSettings();
  return (
    <SectionScreen title={adminWords().ownChanges}>
      <p>{ownChangeWords().lead}</p>
      <DocumentView document={settings.document}>
        {({ settings: { ownChanges = [] }, version }) => (
          <OwnChanges begin={ownChanges} version={version} settings={settings} />
        )}
      </DocumentView>
    </SectionScreen>
  );
}

/** Minutes as for what takes least of the built-in ones; assumed. */
const begun = (): OwnChange => ({
  id: crypto.randomUUID(),
  name: '',
  actsOn: 'device',
  reachesNeighbours: false,
  setupMin: 5,
  restoreMin: 5,
  kit: '',
  caution: '',
  byClient: null,
  mayStay: false,
  keepsAway: null,
});

function OwnChanges({
  begin,
  version,
  settings: { sending, save, isSaved, touch },
}: {
  begin: readonly OwnChange[];
  version: number;
  settings: ReturnType<typeof useSettings>;
}) {
  const t = ownChangeWords();
  const section = useSectionDraft('changes', { fields: { changes: begin }, version });
  if (section === null) return null;
  const { changes } = section.fields;
  const set = (next: readonly OwnChange[]) => {
    touch();
    section.change({ changes: next });
  };
  const isWithdrawn = begin.some(({ id }) => !changes.some((change) => change.id === id));
  return (
    <form
      class="stack admin-form"
      onSubmit={async (event) => {
        event.preventDefault();
        if (await save({ ownChanges: [...changes] })) await section.forget();
      }}
    >
      {changes.length === 0 && <p>{t.none}</p>}
      {changes.map((change, at) => (
        <Card key={change.id} title={change.name === '' ? t.unnamed : change.name}>
          <OwnChangeFields
            change={change}
            problem={sending.problem}
            at={at}
            onChange={(part) =>
              set(changes.map((each) => (each.id === change.id ? { ...each, ...part } : each)))
            }
          />
          <div>
            <Button kind="quiet" onClick={() => set(changes.filter(({ id }) => id !== change.id))}>
              {t.withdraw(change.name)}
            </Button>
          </div>
        </Card>
      ))}
      {changes.length < mostOwnChanges && (
        <div>
          <Button onClick={() => set([...changes, begun()])}>{t.add}</Button>
        </div>
      )}
      {isWithdrawn && <p>{t.withdrawn}</p>}
      <SaveRow settings={{ sending, isSaved }} draft={section} />
    </form>
  );
}

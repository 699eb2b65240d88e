import { paths } from '../api/paths.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { Screen } from '../parts/screen.tsx';
import { Wide } from '../parts/wide.tsx';
import { useDocument } from '../store/documents.ts';
import { wordsOf } from '../words/language.ts';
import { terms } from '../words/terms.ts';

const t = wordsOf({
  en: {
    title: 'Members',
    name: 'Name',
    email: 'Email',
    role: 'Role',
    active: 'Active',
    yes: 'yes',
    no: 'no',
  },
  de: {
    title: 'Mitglieder',
    name: 'Name',
    email: 'E-Mail',
    role: 'Rolle',
    active: 'Aktiv',
    yes: 'ja',
    no: 'nein',
  },
});

/** Everybody in the organisation. */
export function MembersScreen() {
  const words = t();
  const members = useDocument(paths.members);
  return (
    <Screen title={words.title}>
      <DocumentView document={members}>
        {({ items }) => (
          <Wide label={words.title}>
            <table>
              <thead>
                <tr>
                  {[words.name, words.email, words.role, words.active].map((head) => (
                    <th key={head} scope="col">
                      {head}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {items.map((member) => (
                  <tr key={member.id}>
                    <th scope="row">{member.name}</th>
                    <td>{member.email}</td>
                    <td>{terms().roles[member.role]}</td>
                    <td>{member.active ? words.yes : words.no}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Wide>
        )}
      </DocumentView>
    </Screen>
  );
}

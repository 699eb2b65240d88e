import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { longest } from '../../../shared/contract/limits.ts';
import type { Member } from '../../../shared/contract/people.ts';
import { memberRoles } from '../../../shared/contract/people-names.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import { read } from '../api/client.ts';
import { type DocumentPath, paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Choices, Field } from '../parts/field.tsx';
import { NewPassword } from '../parts/new-password.tsx';
import { Badge, Notice } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { Tick } from '../parts/tick.tsx';
import { refresh, useDocument } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { frameWords } from '../words/frame.ts';
import { terms } from '../words/terms.ts';
import { adminWords } from './words.ts';

const roleOptions = () => memberRoles.map((value) => ({ value, label: terms().memberRole[value] }));

/** Everybody in the organisation: who may sign in, and as what. */
export function MembersScreen() {
  const t = adminWords();
  const members = useDocument(paths.members);
  /** The id of whoever is being changed: the list knows them as they are by now. */
  const [open, setOpen] = useState<string | null>(null);
  const [isAdding, setAdding] = useState(false);
  const opened = members.body?.items.find(({ id }) => id === open);
  return (
    <Screen title={t.members}>
      <div>
        <Button kind="primary" onClick={() => setAdding(true)}>
          {t.add}
        </Button>
      </div>
      <DocumentView document={members}>
        {({ items }) => (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls by itself has to be reached by keyboard
          <section class="wide" tabIndex={0} aria-label={t.members}>
            <table>
              <thead>
                <tr>
                  {[t.name, t.email, t.role, t.active, t.change].map((head) => (
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
                    <td>{terms().memberRole[member.role]}</td>
                    <td>{member.active ? t.yes : <Badge tone="caution">{t.no}</Badge>}</td>
                    <td>
                      <Button aria-label={t.changeOf(member.name)} onClick={() => setOpen(member.id)}>
                        {t.change}
                      </Button>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        )}
      </DocumentView>
      {isAdding && (
        <Dialog title={t.add} onClose={() => setAdding(false)}>
          <AddMember onDone={() => setAdding(false)} />
        </Dialog>
      )}
      {opened !== undefined && (
        <Dialog title={opened.name} onClose={() => setOpen(null)}>
          <ChangeMember member={opened} onDone={() => setOpen(null)} />
          <SetPassword member={opened} />
          <TakeFactor member={opened} />
        </Dialog>
      )}
    </Screen>
  );
}

function AddMember({ onDone }: { onDone: () => void }) {
  const t = adminWords();
  const [member, change, forget] = useDraftForm('new member', {
    name: '',
    email: '',
    role: 'technician' as MemberRole,
  });
  // Never kept on a device.
  const [password, setPassword] = useState('');
  const sending = useSending();
  return (
    <form
      class="stack"
      onSubmit={async (event) => {
        event.preventDefault();
        const body = { ...member, password };
        if ((await sending.send<Member>('POST', addresses.members, { body })) === null) return;
        await forget();
        await refresh(paths.members);
        onDone();
      }}
    >
      <Field
        label={t.name}
        required
        maxLength={longest.line}
        value={member.name}
        onInput={({ currentTarget }) => change({ name: currentTarget.value })}
      />
      <Field
        label={t.email}
        type="email"
        required
        autocomplete="off"
        value={member.email}
        onInput={({ currentTarget }) => change({ email: currentTarget.value })}
      />
      <Choices
        label={t.role}
        options={roleOptions()}
        value={member.role}
        onChoose={(role) => change({ role })}
      />
      <NewPassword label={t.password} hint={t.passwordHint} value={password} onType={setPassword} />
      <SendingResult sending={sending} />
      <div>
        <Button type="submit" kind="primary" disabled={sending.isBusy}>
          {t.addIt}
        </Button>
      </div>
    </form>
  );
}

function ChangeMember({ member, onDone }: { member: Member; onDone: () => void }) {
  const t = adminWords();
  // Only what was changed here is a draft: what somebody else changes meanwhile shows, and is not taken back.
  const [draft, change, forget] = useDraftForm<Partial<Pick<Member, 'name' | 'role' | 'active'>>>(
    `member ${member.id}`,
    {},
  );
  const { name, role, active } = { ...member, ...draft };
  const sending = useSending();
  const save = async () => {
    const path = addressOf(addresses.member, { id: member.id });
    // The list knows no tag of one member: it is read, and has to be the one that was changed here.
    const now = await read(path as DocumentPath<Member>);
    const ifMatch = now.kind === 'ok' && now.body.version === member.version ? (now.etag ?? '') : '"older"';
    const done = await sending.send<Member>('PUT', path, { body: { name, role, active }, ifMatch });
    await refresh(paths.members);
    if (done === null) return;
    await forget();
    onDone();
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <Field
        label={t.name}
        required
        maxLength={longest.line}
        value={name}
        onInput={({ currentTarget }) => change({ name: currentTarget.value })}
      />
      <Choices
        label={t.role}
        options={roleOptions()}
        value={role}
        onChoose={(chosen) => change({ role: chosen })}
      />
      <Tick label={t.active} isOn={active} onChange={(isOn) => change({ active: isOn })} />
      {!active && <Notice tone="caution">{t.signInOff}</Notice>}
      <SendingResult sending={sending} />
      <div>
        <Button type="submit" kind="primary" disabled={sending.isBusy}>
          {frameWords().save}
        </Button>
      </div>
    </form>
  );
}

function SetPassword({ member }: { member: Member }) {
  const t = adminWords();
  const [password, setPassword] = useState('');
  const [isSet, setSet] = useState(false);
  const sending = useSending();
  return (
    <form
      class="stack"
      onSubmit={async (event) => {
        event.preventDefault();
        const done = await sending.send<Member>(
          'POST',
          addressOf(addresses.memberPassword, { id: member.id }),
          {
            body: { password },
          },
        );
        if (done === null) return;
        await refresh(paths.members);
        setSet(true);
        setPassword('');
      }}
    >
      <h3>{t.setPassword}</h3>
      <NewPassword label={t.password} hint={t.setPasswordHint} value={password} onType={setPassword} />
      <SendingResult sending={sending} />
      {isSet && (
        <Notice tone="good" announce>
          {t.passwordSet}
        </Notice>
      )}
      <div>
        <Button type="submit" disabled={sending.isBusy}>
          {t.setIt}
        </Button>
      </div>
    </form>
  );
}

/** For a member who has lost what they show beside their password. */
function TakeFactor({ member }: { member: Member }) {
  const t = adminWords();
  const [isDone, setDone] = useState(false);
  const sending = useSending();
  const take = async (): Promise<void> => {
    const path = addressOf(addresses.endMemberFactors, { id: member.id });
    setDone((await sending.send<Member>('POST', path)) !== null);
  };
  return (
    <div class="stack">
      <h3>{t.takeFactor}</h3>
      <p class="soft">{t.takeFactorHint}</p>
      <SendingResult sending={sending} />
      {isDone && (
        <Notice tone="good" announce>
          {t.factorTaken}
        </Notice>
      )}
      <div>
        <Button disabled={sending.isBusy} onClick={() => void take()}>
          {t.takeFactor}
        </Button>
      </div>
    </div>
  );
}

import { useState } from 'preact/hooks';
import { session, signOut } from '../api/session.ts';
import { Button } from '../parts/button.tsx';
import { Card, Facts } from '../parts/card.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { Choices } from '../parts/field.tsx';
import { Screen } from '../parts/screen.tsx';
import { forgetMember } from '../store/member-database.ts';
import { outbox } from '../store/outbox.ts';
import { chooseLook, look, looks } from '../style/look.ts';
import { chooseLanguage, language, plural, wordsOf } from '../words/language.ts';
import { terms } from '../words/terms.ts';
import { OwnPassword } from './password.tsx';
import { SecondFactor } from './second-factor.tsx';
import { SignIns } from './sign-ins.tsx';

const t = wordsOf({
  en: {
    title: 'Settings',
    look: 'Look',
    looks: { auto: 'As this device', light: 'Light', dark: 'Dark', outdoor: 'Outdoor: highest contrast' },
    language: 'Language',
    account: 'Account',
    name: 'Name',
    role: 'Role',
    organisation: 'Organisation',
    signOut: 'Sign out',
    lose: (count: number) =>
      plural(
        'en',
        count,
        'One step has not been sent yet. Signing out takes it off this device for good.',
        `${count} steps have not been sent yet. Signing out takes them off this device for good.`,
      ),
    signOutAnyway: 'Sign out and lose them',
  },
  de: {
    title: 'Einstellungen',
    look: 'Aussehen',
    looks: { auto: 'Wie das Gerät', light: 'Hell', dark: 'Dunkel', outdoor: 'Draußen: stärkster Kontrast' },
    language: 'Sprache',
    account: 'Konto',
    name: 'Name',
    role: 'Rolle',
    organisation: 'Organisation',
    signOut: 'Abmelden',
    lose: (count) =>
      plural(
        'de',
        count,
        'Ein Schritt wurde noch nicht gesendet. Abmelden nimmt ihn endgültig von diesem Gerät.',
        `${count} Schritte wurden noch nicht gesendet. Abmelden nimmt sie endgültig von diesem Gerät.`,
      ),
    signOutAnyway: 'Abmelden und verlieren',
  },
});

/** Look and language of this device, the member's password, and signing out, here and elsewhere. */
export function SettingsScreen() {
  const words = t();
  const [asking, setAsking] = useState(false);
  const current = session.value;
  if (current === null) return null;
  const { member, organisation } = current;
  const leave = async (): Promise<void> => {
    await signOut();
    await forgetMember(member.id);
    outbox.value = [];
  };
  return (
    <Screen title={words.title}>
      <div class="stack narrow">
        <Choices
          label={words.look}
          options={looks.map((value) => ({ value, label: words.looks[value] }))}
          value={look.value}
          onChoose={chooseLook}
        />
        <Choices
          label={words.language}
          options={[
            { value: 'en', label: 'English' },
            { value: 'de', label: 'Deutsch' },
          ]}
          value={language.value}
          onChoose={chooseLanguage}
        />
        <Card title={words.account}>
          <Facts
            facts={[
              [words.name, member.name],
              [words.role, terms().memberRole[member.role]],
              [words.organisation, organisation.name],
            ]}
          />
          <div>
            <Button onClick={() => (outbox.peek().length > 0 ? setAsking(true) : void leave())}>
              {words.signOut}
            </Button>
          </div>
        </Card>
        <OwnPassword />
        <SecondFactor />
        <SignIns />
      </div>
      {asking && (
        <Dialog title={words.signOut} onClose={() => setAsking(false)}>
          <p>{words.lose(outbox.value.length)}</p>
          <div>
            <Button kind="danger" onClick={() => void leave()}>
              {words.signOutAnyway}
            </Button>
          </div>
        </Dialog>
      )}
    </Screen>
  );
}

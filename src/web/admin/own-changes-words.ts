import { ranges } from '../../../shared/contract/limits.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import { wordsOf } from '../words/language.ts';
import { number } from '../words/times.ts';

type Targets = Record<OwnChange['actsOn'], string>;
type Ways = Record<NonNullable<OwnChange['byClient']> | 'notAtAll', string>;

const { min, max } = ranges.keepsAway;
const en = {
  lead: 'Kinds of change that your firm knows and the built-in list does not. Each is offered wherever it can be made, beside the others.',
  none: 'No kind of our own yet.',
  add: 'Add a kind of change',
  unnamed: 'A new kind of change',
  withdraw: (name: string) => `Withdraw ${name === '' ? 'this kind' : name}`,
  withdrawn:
    'What is withdrawn is offered no longer once you save. Tickets on which it was made keep what was said of it.',
  name: 'What is it called?',
  nameHint: 'As an order in few words, such as: Clip ferrites on',
  actsOn: 'What is it made to?',
  targets: {
    device: 'a device',
    port: 'a socket',
    link: 'a cable',
    chain: 'the chain as a whole',
  } as Targets,
  reachesNeighbours: 'It also works on what is next to it: the devices a cable joins, the cables at a device',
  setupMin: 'Minutes to make it',
  restoreMin: 'Minutes to put it back',
  kit: 'What to have at hand',
  caution: 'What to take care of',
  cautionHint: 'Shown before it is declared and until it is made: ladders, laser light, mains, cables.',
  byClient: 'May a client do it, told by phone?',
  ways: {
    notAtAll: 'No',
    remoteControl: 'Yes, by a remote control alone',
    switch: 'Yes, by a switch within reach',
  } as Ways,
  mayStay: 'It may stay once the fault is gone with it',
  keepsAway: 'Chance that a fault there stays away with it',
  keepsAwayHint: () =>
    `From ${number(min, 2)} to ${number(max, 2)}. Leave it empty where nobody has a figure: it then says little for or against that place.`,
};
const de: typeof en = {
  lead: 'Arten von Änderungen, die euer Betrieb kennt und die eingebaute Liste nicht. Jede wird angeboten, wo sie möglich ist, neben den anderen.',
  none: 'Noch keine eigene Art.',
  add: 'Art von Änderung hinzufügen',
  unnamed: 'Eine neue Art von Änderung',
  withdraw: (name) => (name === '' ? 'Diese Art zurückziehen' : `${name} zurückziehen`),
  withdrawn:
    'Was zurückgezogen ist, wird nach dem Speichern nicht mehr angeboten. Tickets, auf denen es gemacht wurde, behalten, was dazu gesagt war.',
  name: 'Wie heißt sie?',
  nameHint: 'Als Auftrag in wenigen Worten, etwa: Ferrite anklemmen',
  actsOn: 'Woran wird sie gemacht?',
  targets: {
    device: 'an einem Gerät',
    port: 'an einer Buchse',
    link: 'an einem Kabel',
    chain: 'an der Kette als Ganzem',
  },
  reachesNeighbours:
    'Sie wirkt auch auf das daneben: die Geräte, die ein Kabel verbindet, die Kabel an einem Gerät',
  setupMin: 'Minuten, sie zu machen',
  restoreMin: 'Minuten, sie rückgängig zu machen',
  kit: 'Was zur Hand sein muss',
  caution: 'Worauf zu achten ist',
  cautionHint:
    'Steht da, bevor sie angesagt und bis sie gemacht ist: Leitern, Laserlicht, Netzspannung, Kabel.',
  byClient: 'Darf ein Kunde sie machen, am Telefon angeleitet?',
  ways: {
    notAtAll: 'Nein',
    remoteControl: 'Ja, allein mit einer Fernbedienung',
    switch: 'Ja, mit einem Schalter in Reichweite',
  },
  mayStay: 'Sie darf bleiben, wenn der Fehler damit weg ist',
  keepsAway: 'Chance, dass ein Fehler dort damit wegbleibt',
  keepsAwayHint: () =>
    `Von ${number(min, 2)} bis ${number(max, 2)}. Leer lassen, wenn niemand eine Zahl hat: Dann sagt sie wenig für oder gegen diese Stelle.`,
};
export const ownChangeWords = wordsOf({ en, de });

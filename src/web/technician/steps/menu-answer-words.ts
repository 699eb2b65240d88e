import type { Symptom } from '../../../../shared/contract/triage.ts';
import { liesOverPicture } from '../../../../shared/isolation/index.ts';
import { plural, wordsOf } from '../../words/language.ts';

/** What a menu did when the fault came: in words for a picture that goes, and for one that has something over it. */
const words = wordsOf({
  en: {
    goes: {
      stayed: 'It happened: the menu stayed',
      vanished: 'It happened: the menu vanished too',
      said: { stayed: 'the menu stayed', vanished: 'the menu vanished' },
      confirmStayed: 'Yes: the menu had stayed',
      confirmVanished: 'Yes: the menu had vanished',
      concludeTitle: {
        input: (device: string) => `The menu stayed: it lies before ${device}`,
        output: (device: string) => `The menu vanished: it lies behind ${device}`,
        both: (device: string) => `The menu of ${device} stayed and vanished`,
      },
      seen: (stayed: number, vanished: number) =>
        `Stayed ${plural('en', stayed, 'once', `${stayed} times`)}, vanished ${plural('en', vanished, 'once', `${vanished} times`)}.`,
    },
    over: {
      stayed: 'It happened: the menu was clean',
      vanished: 'It happened: the menu had it too',
      said: { stayed: 'the menu was clean', vanished: 'the menu had it too' },
      confirmStayed: 'Yes: the menu was clean',
      confirmVanished: 'Yes: the menu had it too',
      concludeTitle: {
        input: (device: string) => `The menu was clean: it lies before ${device}`,
        output: (device: string) => `The menu had it too: it lies behind ${device}`,
        both: (device: string) => `The menu of ${device} was clean, and had it too`,
      },
      seen: (clean: number, hit: number) =>
        `Clean ${plural('en', clean, 'once', `${clean} times`)}, hit too ${plural('en', hit, 'once', `${hit} times`)}.`,
    },
  },
  de: {
    goes: {
      stayed: 'Es ist passiert: Das Menü blieb',
      vanished: 'Es ist passiert: Das Menü verschwand auch',
      said: { stayed: 'das Menü blieb', vanished: 'das Menü verschwand' },
      confirmStayed: 'Ja: Das Menü blieb',
      confirmVanished: 'Ja: Das Menü verschwand',
      concludeTitle: {
        input: (device) => `Das Menü blieb: Es liegt vor ${device}`,
        output: (device) => `Das Menü verschwand: Es liegt hinter ${device}`,
        both: (device) => `Das Menü von ${device} blieb und verschwand`,
      },
      seen: (stayed, vanished) => `Blieb ${stayed}-mal, verschwand ${vanished}-mal.`,
    },
    over: {
      stayed: 'Es ist passiert: Das Menü war sauber',
      vanished: 'Es ist passiert: Das Menü hatte es auch',
      said: { stayed: 'das Menü war sauber', vanished: 'das Menü hatte es auch' },
      confirmStayed: 'Ja: Das Menü war sauber',
      confirmVanished: 'Ja: Das Menü hatte es auch',
      concludeTitle: {
        input: (device) => `Das Menü war sauber: Es liegt vor ${device}`,
        output: (device) => `Das Menü hatte es auch: Es liegt hinter ${device}`,
        both: (device) => `Das Menü von ${device} war sauber und hatte es auch`,
      },
      seen: (clean, hit) => `Sauber ${clean}-mal, mitbetroffen ${hit}-mal.`,
    },
  },
});

export const menuAnswerWords = (symptom: Pick<Symptom, 'kind'>) =>
  words()[liesOverPicture(symptom) ? 'over' : 'goes'];

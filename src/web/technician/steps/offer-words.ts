import { wordsOf } from '../../words/language.ts';

/** Words around what the plan offers; the offers themselves are messages. */
export const offerWords = wordsOf({
  en: { otherWays: 'Other ways on', nothing: 'Nothing can be done here now' },
  de: { otherWays: 'Andere Wege weiter', nothing: 'Hier ist jetzt nichts zu tun' },
});

import { wordsOf } from '../../words/language.ts';

/** Words around what the plan offers; the offers themselves are messages. */
export const offerWords = wordsOf({
  en: {
    otherWays: 'Other ways on',
    nothing: 'Nothing can be done here now',
    whatMadeItCome: 'What made it come?',
    notSeen: 'Not seen, or not sure',
    sayHowItCame: 'That is how it came',
  },
  de: {
    otherWays: 'Andere Wege weiter',
    nothing: 'Hier ist jetzt nichts zu tun',
    whatMadeItCome: 'Was hat ihn ausgelöst?',
    notSeen: 'Nicht gesehen oder nicht sicher',
    sayHowItCame: 'So kam er',
  },
});

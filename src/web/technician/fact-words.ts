import type { Link } from '../../../shared/contract/chain.ts';
import { wordsOf } from '../words/language.ts';

type Values = { directions: Record<Link['direction'], string>; routes: Record<Link['route'], string> };
const values: Record<'en' | 'de', Values> = {
  en: {
    directions: {
      notDirectional: 'either way round',
      asMarked: 'as marked',
      reversed: 'the wrong way round',
      unknown: 'not known',
    },
    routes: { free: 'open', inWall: 'in a wall', inConduit: 'in a conduit' },
  },
  de: {
    directions: {
      notDirectional: 'beliebig',
      asMarked: 'wie aufgedruckt',
      reversed: 'verkehrt herum',
      unknown: 'nicht bekannt',
    },
    routes: { free: 'offen', inWall: 'in der Wand', inConduit: 'im Rohr' },
  },
};

/** Words for what a chain's description says of its parts. */
export const factWords = wordsOf({
  en: {
    ...values.en,
    role: 'What it is',
    model: 'Model',
    serial: 'Serial number',
    firmware: 'Firmware',
    drawsMenu: 'Draws a menu',
    notes: 'Notes',
    from: 'From',
    to: 'To',
    length: 'Length',
    construction: 'Built as',
    category: 'Category',
    certified: 'Certified',
    direction: 'Lies',
    sourceEnd: 'Source end',
    sinkEnd: 'Sink end',
    seated: 'seated',
    powered: 'powered',
    route: 'Runs',
    installed: 'Installed',
    notKnown: 'not known',
    yes: 'yes',
    no: 'no',
  },
  de: {
    ...values.de,
    role: 'Was es ist',
    model: 'Modell',
    serial: 'Seriennummer',
    firmware: 'Firmware',
    drawsMenu: 'Zeichnet ein Menü',
    notes: 'Notizen',
    from: 'Von',
    to: 'Nach',
    length: 'Länge',
    construction: 'Bauart',
    category: 'Kategorie',
    certified: 'Zertifiziert',
    direction: 'Liegt',
    sourceEnd: 'Quellenseite',
    sinkEnd: 'Anzeigenseite',
    seated: 'sitzt fest',
    powered: 'versorgt',
    route: 'Verläuft',
    installed: 'Eingebaut',
    notKnown: 'nicht bekannt',
    yes: 'ja',
    no: 'nein',
  },
});

import type { ChangeKind } from '../../../../shared/contract/change.ts';
import {
  type Caution,
  cautionTexts,
  changeCatalogue,
} from '../../../../state-machines/triage/changes/catalogue.ts';
import { cautionsInGerman, changesInGerman, menuInGerman } from '../changes-de.ts';
import type { Pair } from './template.ts';

/** What the catalogue of changes says, in the German that the screens have for it kind by kind; and its needs. */
export function cataloguePairs(): Pair[] {
  const kinds = Object.keys(changeCatalogue) as ChangeKind[];
  return [
    ...kinds.flatMap((kind): Pair[] => {
      const { label, instructions, afterwards } = changeCatalogue[kind];
      const german = changesInGerman[kind];
      return [
        [label, german.label],
        [instructions, german.instructions],
        [afterwards, german.afterwards],
      ];
    }),
    ...(Object.keys(cautionTexts) as Caution[]).map(
      (caution): Pair => [cautionTexts[caution], cautionsInGerman[caution]],
    ),
    ...needs,
  ];
}

const needs: readonly Pair[] = [
  [
    'a cable known to be good: certified, long enough, no longer than needed',
    'ein Kabel, das sicher gut ist: zertifiziert, lang genug, nicht länger als nötig',
  ],
  ['tape or a cable cover', 'Klebeband oder eine Kabelbrücke'],
  [
    'a coupler that passes the full rate, or a longer cable known to be good',
    'eine Kupplung, die die volle Rate durchlässt, oder ein längeres Kabel, das sicher gut ist',
  ],
  [
    'a switch that regenerates sync and passes the full rate',
    'ein Umschalter, der den Takt erneuert und die volle Rate durchlässt',
  ],
  ['a short cable known to be good', 'ein kurzes Kabel, das sicher gut ist'],
  ['its power supply', 'sein Netzteil'],
  [
    'a passive cable of at most about 4 m (13 ft), known to be good',
    'ein passives Kabel von höchstens etwa 4 m, das sicher gut ist',
  ],
  ['a long cable for the processor’s input', 'ein langes Kabel für den Eingang des Prozessors'],
  ['mains near the display', 'Netzstrom nahe der Anzeige'],
  [
    'another display that does the same content protection and takes the same signal',
    'eine andere Anzeige, die denselben Kopierschutz kann und dasselbe Signal nimmt',
  ],
  [
    'the earlier settings, written down or saved',
    'die früheren Einstellungen, aufgeschrieben oder gesichert',
  ],
  ['the firmware file and its maker’s notes', 'die Firmware-Datei und die Anleitung des Herstellers'],
  [
    'time: an interrupted update can spoil the device',
    'Zeit: Ein abgebrochenes Update kann das Gerät unbrauchbar machen',
  ],
  ['about {l:num} m, as long as the one that is there', 'etwa {l} m, so lang wie das, das da ist'],
  ['content protection {v:raw} on the other display', 'Kopierschutz {v} an der anderen Anzeige'],
  // planned-view.ts
  [
    'Bring up the menu with the remote control and leave it in the picture. When the fault comes, look at the menu: does it stay, or does it vanish with the picture?',
    menuInGerman.instructions,
  ],
  ['Take the menu off the picture again.', menuInGerman.afterwards],
  [
    'Leave everything plugged in as it is and play the other source with the same kind of content.',
    'Lass alles gesteckt, wie es ist, und spiel die andere Quelle mit Inhalt gleicher Art.',
  ],
  ['Go back to the usual source.', 'Geh zurück zur üblichen Quelle.'],
];

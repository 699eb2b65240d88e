import type { Pair } from './template.ts';

/** What the audit says of devices and their firmware: shared/audit/rules/devices.ts, shared/chain/firmware.ts. */
export const auditDevicePairs: readonly Pair[] = [
  [
    "A receiver often has to be told to pass {g:num} Gbit/s; what {l:labels} of {x:place} is set to isn't noted.",
    'Einem Receiver muss man oft sagen, dass er {g} Gbit/s durchlassen soll; worauf {l} an {x.dat} steht, ist nicht notiert.',
  ],
  [
    'Look at the signal format of each input and output in its menu, and note it.',
    'Sieh im Menü das Signalformat jedes Eingangs und Ausgangs nach und schreib es auf.',
  ],
  [
    '{x:place} is one more device on the way; extenders over twisted pair are best avoided.',
    '{x} ist ein Gerät mehr auf dem Weg; Verlängerungen über verdrillte Paare meidet man am besten.',
  ],
  [
    'Look what it runs over, and note it; plan an active optical cable in place of twisted pair.',
    'Sieh nach, worüber sie läuft, und schreib es auf; plan ein aktives optisches Kabel statt verdrillter Paare.',
  ],
  [
    '{x:place} scales or processes the picture; with {y:place} on the way only that one should.',
    '{x} skaliert oder verarbeitet das Bild; mit {y.dat} auf dem Weg sollte das nur jener tun.',
  ],
  [
    'Note its settings, then switch off its scaling, conversion and processing.',
    'Schreib die Einstellungen auf, dann schalte Skalierung, Wandlung und Verarbeitung dort ab.',
  ],
  [
    '{x:place} scales or processes the picture, and so does {y:place}.',
    '{x} skaliert oder verarbeitet das Bild, und {y} ebenso.',
  ],
  ['{x:place} scales or processes the picture.', '{x} skaliert oder verarbeitet das Bild.'],
  [
    'Note its settings; switch scaling and processing off while looking for the fault.',
    'Schreib die Einstellungen auf; schalte Skalierung und Verarbeitung ab, solange du den Fehler suchst.',
  ],
  [
    'Note its settings, then leave scaling and processing to one device.',
    'Schreib die Einstellungen auf, dann überlass Skalierung und Verarbeitung einem einzigen Gerät.',
  ],
  [
    '{x:place} answers with an EDID of its own instead of passing on what the display says.',
    '{x} antwortet mit einem eigenen EDID, statt weiterzugeben, was die Anzeige sagt.',
  ],
  [
    '{x:place} answers with a limited EDID instead of passing on what the display says.',
    '{x} antwortet mit einem beschränkten EDID, statt weiterzugeben, was die Anzeige sagt.',
  ],
  [
    'Note its settings, then switch EDID management off; leave it to the processor, if anything.',
    'Schreib die Einstellungen auf, dann schalte die EDID-Verwaltung ab; überlass sie allenfalls dem Prozessor.',
  ],
  ['{x:place} also feeds {l:places}, beside {y:place}.', '{x} speist auch {l}, neben {y.dat}.'],
  [
    'Unplug {x:place} at {d:bare} while you look for the fault.',
    'Zieh {x} an {d} ab, solange du den Fehler suchst.',
  ],
  ['{x:place} feeds {l:places} in parallel.', '{x} speist parallel {l}.'],
  [
    'Leave only the display that shows the fault plugged in while you look for it.',
    'Lass nur die Anzeige gesteckt, die den Fehler zeigt, solange du ihn suchst.',
  ],
  [
    'Firmware {f:raw} of {x:place} is below {m:raw}, the lowest your organisation accepts for model {o:raw}.',
    'Firmware {f} von {x.dat} liegt unter {m}, dem niedrigsten Stand, den dein Betrieb beim Modell {o} zulässt.',
  ],
  [
    'Save its settings and note the level as found, then update it to {m:raw} or later.',
    'Sichere die Einstellungen, schreib den vorgefundenen Stand auf, dann aktualisier auf {m} oder neuer.',
  ],
  [
    "Whether the firmware of {x:place} reaches {m:raw} can't be told: {r:part}.",
    'Ob die Firmware von {x.dat} den Stand {m} erreicht, lässt sich nicht sagen: {r}.',
  ],
  [
    'Read the firmware level in its menu and note it as shown.',
    'Lies den Firmware-Stand im Menü und schreib ihn auf, wie er dasteht.',
  ],
  // Where a finding is from.
  ['common practice, no source', 'übliche Praxis, ohne Quelle'],
  ['level set by the organisation', 'Stand, den der Betrieb festlegt'],
  [
    'cable categories of the HDMI compliance programme (from memory); which to ask for: common practice',
    'Kabelkategorien des HDMI-Prüfprogramms (aus dem Gedächtnis); welche zu verlangen ist: übliche Praxis',
  ],
  [
    "computed: HDMI character rates and the fixed rate link's capacity; what is assumed is named",
    'berechnet: Zeichenraten von HDMI und Kapazität der Verbindung mit fester Rate; was angenommen ist, steht dabei',
  ],
  ['HDMI 1.4b, clause 4.2.7 (from memory)', 'HDMI 1.4b, Abschnitt 4.2.7 (aus dem Gedächtnis)'],
  ['HDCP 2.2 on HDMI, stream type (from memory)', 'HDCP 2.2 auf HDMI, Stream-Typ (aus dem Gedächtnis)'],
  // firmware.ts, firmware-reading.ts
  ['nobody has read the firmware yet', 'niemand hat die Firmware bisher gelesen'],
  [
    'the minimum names a build, and the reading has none',
    'der Mindeststand nennt einen Build, der gelesene Stand nicht',
  ],
  [
    'they differ only in a hash, which has no order',
    'sie unterscheiden sich nur in einem Hash, der keine Reihenfolge hat',
  ],
  [
    'it depends on whether the day or the month comes first',
    'es hängt davon ab, ob der Tag oder der Monat vorn steht',
  ],
  ["one is of '{a:raw}', the other of '{b:raw}'", 'das eine ist von „{a}“, das andere von „{b}“'],
  ['one is {a:part}, the other {b:part}', 'das eine ist {a}, das andere {b}'],
  ['a version number', 'eine Versionsnummer'],
  ['a date', 'ein Datum'],
  ['a bare build number', 'eine bloße Build-Nummer'],
  ['a hexadecimal number', 'eine hexadezimale Zahl'],
  ["'{a:raw}' can't be read: {r:part}", '„{a}“ lässt sich nicht lesen: {r}'],
  ['nothing is written down', 'nichts ist notiert'],
  ['there is no number in it', 'es steht keine Zahl darin'],
  ['it names several versions', 'es nennt mehrere Versionen'],
  ['{a:raw} is older than {b:raw}', '{a} ist älter als {b}'],
];

import type { Pair } from './template.ts';

/** What the audit says of cables and ports, and the care that its work asks for: shared/chain/audit-rules. */
export const auditPairs: readonly Pair[] = [
  // cables.ts
  ["The category of {x:place} isn't known.", 'Die Kategorie ist nicht bekannt: {x}.'],
  [
    'Look for the certification label on the cable or its packing, scan it, and note the category.',
    'Such das Zertifizierungsetikett am Kabel oder auf der Verpackung, lies es ein und schreib die Kategorie auf.',
  ],
  [
    '{x:place} is of category {c:raw}, tested for {a:num} Gbit/s, between ports that pass {b:num} Gbit/s.',
    '{x} hat die Kategorie {c}, geprüft für {a} Gbit/s, zwischen Buchsen, die {b} Gbit/s durchlassen.',
  ],
  [
    'Replace it with a cable that is certified for 48 Gbit/s.',
    'Ersetz es durch ein Kabel, das für 48 Gbit/s zertifiziert ist.',
  ],
  [
    'Replace it with a cable that is certified for 18 Gbit/s or 48 Gbit/s.',
    'Ersetz es durch ein Kabel, das für 18 Gbit/s oder 48 Gbit/s zertifiziert ist.',
  ],
  [
    '{x:place} is said to be {c:raw}, but nobody has seen its certification label.',
    '{x} soll {c} sein, aber niemand hat das Zertifizierungsetikett gesehen.',
  ],
  [
    'Find the label and scan it. Without one, replace the cable with a certified one.',
    'Such das Etikett und lies es ein. Gibt es keines, ersetz das Kabel durch ein zertifiziertes.',
  ],
  [
    '{x:place} is only {l:num} m long; below about {m:num} m ({f:num} ft) cables give trouble more often.',
    '{x} ist nur {l} m lang; unter etwa {m} m machen Kabel öfter Ärger.',
  ],
  [
    'Replace it with a certified cable of at least about {m:num} m ({f:num} ft).',
    'Ersetz es durch ein zertifiziertes Kabel von mindestens etwa {m} m.',
  ],
  [
    '{x:place} is {c:part} and {l:num} m long; copper is good for about {m:num} m ({f:num} ft).',
    '{x} ist {c} und {l} m lang; Kupfer taugt für etwa {m} m.',
  ],
  ['passive copper', 'passives Kupfer'],
  ['active copper', 'aktives Kupfer'],
  ['active optical', 'aktiv optisch'],
  ['twisted-pair extender', 'Verlängerung über verdrillte Paare'],
  [
    'Move the source nearer, or go through a switch or receiver and lay an active optical cable with factory-fitted ends from there.',
    'Stell die Quelle näher, oder geh über einen Umschalter oder Receiver und leg von dort ein aktives optisches Kabel mit Enden aus der Fabrik.',
  ],
  [
    'Replace it with an active optical cable whose ends were fitted in the factory.',
    'Ersetz es durch ein aktives optisches Kabel, dessen Enden in der Fabrik montiert wurden.',
  ],
  ['The ends of {x:place} were fitted on site.', 'Die Enden wurden vor Ort montiert: {x}.'],
  [
    "It isn't known whether the ends of {x:place} were fitted in the factory.",
    'Es ist nicht bekannt, ob die Enden in der Fabrik montiert wurden: {x}.',
  ],
  ['Look at both ends and note it.', 'Sieh dir beide Enden an und schreib es auf.'],
  [
    '{x:place} is active optical, straight from a playback source; it is fed as noted, and still the first to suspect.',
    '{x} ist aktiv optisch und kommt direkt von einer Quelle; die Versorgung ist in Ordnung, soweit notiert, und doch fällt der erste Verdacht darauf.',
  ],
  [
    '{x:place} is active optical, straight from a playback source: {w:part}.',
    '{x} ist aktiv optisch und kommt direkt von einer Quelle: {w}.',
  ],
  [
    'its 5 V line supplies {a:num} mA where {b:num} mA are drawn',
    'Deren 5-V-Leitung liefert {a} mA, wo {b} mA gezogen werden',
  ],
  [
    "a source's 5 V line often can't feed one",
    'Die 5-V-Leitung einer Quelle kann so eines oft nicht speisen',
  ],
  [
    'Check the supply at the source end, and keep a passive cable at hand for a test.',
    'Prüf die Versorgung am Quellenende und halt für einen Test ein passives Kabel bereit.',
  ],
  [
    'Go from the source into a switch, receiver or processor with a passive cable, or feed the optical cable by its own supply at the source end.',
    'Geh von der Quelle mit einem passiven Kabel in einen Umschalter, Receiver oder Prozessor, oder versorg das optische Kabel am Quellenende mit einem eigenen Netzteil.',
  ],
  [
    '{x:place} is best avoided: it adds its own electronics, supplies and handshakes to the way.',
    '{x} meidet man am besten: Das bringt eigene Elektronik, Netzteile und Aushandlungen in den Weg.',
  ],
  [
    'Replace it with an active optical cable with factory-fitted ends, or lay one across for a test.',
    'Ersetz es durch ein aktives optisches Kabel mit Enden aus der Fabrik, oder leg für einen Test eines hinüber.',
  ],
  ['{x:place} lies the wrong way round.', '{x} liegt verkehrt herum.'],
  ['Turn it round.', 'Dreh es um.'],
  [
    'Read the marks at both plugs: the end marked as source goes to the device nearer the source.',
    'Lies die Zeichen an beiden Steckern: Das Ende, das als Quelle bezeichnet ist, kommt an das Gerät näher zur Quelle.',
  ],
  [
    'Nobody has noted which way round {x:place} lies, and it is active: the wrong way it passes nothing, or only sometimes.',
    'Niemand hat notiert, wie herum es liegt, und es ist aktiv: verkehrt herum lässt es nichts durch, oder nur manchmal ({x}).',
  ],
  ["It isn't known whether {x:place} is directional.", 'Es ist nicht bekannt, ob {x} gerichtet ist.'],
  ['Look for an arrow or a marked end.', 'Such einen Pfeil oder ein bezeichnetes Ende.'],
  [
    '{x:place} is noted as not directional, but active cables are.',
    '{x} ist als nicht gerichtet notiert, aber aktive Kabel sind es.',
  ],
  ['Then correct the record.', 'Dann berichtige den Eintrag.'],
  ['{x:place} needs power at {d:bare} and has none.', '{x} braucht Strom an {d} und hat keinen.'],
  [
    '{x:place} needs power at {d:bare}; nobody has noted whether it has it.',
    '{x} braucht Strom an {d}; niemand hat notiert, ob er da ist.',
  ],
  [
    'Plug in the supply that its maker asks for at {d:bare}, not a socket that goes off with the device.',
    'Schließ an {d} das Netzteil an, das der Hersteller verlangt, nicht an einer Dose, die mit dem Gerät ausgeht.',
  ],
  [
    'Check the supply at {d:bare}, also while the devices are on standby.',
    'Prüf die Versorgung an {d}, auch während die Geräte in Bereitschaft sind.',
  ],
  ["{x:place} isn't fully seated at {d:bares}.", '{x} steckt nicht ganz an {d}.'],
  [
    'Nobody has checked the seat of {x:place} at {d:bares}.',
    'Niemand hat geprüft, ob es an {d} fest steckt: {x}.',
  ],
  [
    'Push both plugs home, look for a bent shell or a pull on the cable, and relieve the pull.',
    'Drück beide Stecker ganz hinein, sieh nach, ob ein Gehäuse verbogen ist oder das Kabel unter Zug steht, und nimm den Zug weg.',
  ],

  // ports.ts
  [
    '{x:place} is noted as set to {a:mode}, more than its highest mode, {b:mode}.',
    '{x} ist mit {a} notiert, mehr als die höchste Betriebsart, {b}.',
  ],
  [
    'Look at both in the menu and the manual, and correct the record.',
    'Sieh beides im Menü und in der Anleitung nach und berichtige den Eintrag.',
  ],
  [
    '{x:place} is set to {a:mode}, but both ends of this link pass {b:num} Gbit/s.',
    '{x} steht auf {a}, aber beide Enden dieser Verbindung lassen {b} Gbit/s durch.',
  ],
  [
    'Note the setting as found, then set the port to the mode that passes {b:num} Gbit/s.',
    'Schreib die Einstellung auf, wie du sie vorfindest, dann stell die Buchse auf die Betriebsart, die {b} Gbit/s durchlässt.',
  ],
  [
    '{x:place} passes {a:num} Gbit/s at most; {l:labels} of the same device passes more.',
    '{x} lässt höchstens {a} Gbit/s durch; {l} am selben Gerät lässt mehr durch.',
  ],
  [
    '{x:place} passes {a:num} Gbit/s at most; {l:labels} of the same device pass more.',
    '{x} lässt höchstens {a} Gbit/s durch; {l} am selben Gerät lassen mehr durch.',
  ],
  ['Move the plug to {l:labels}.', 'Steck den Stecker um in {l}.'],
  [
    'Swap it with the plug in {l:labels}, which needs less.',
    'Tausch ihn mit dem Stecker in {l}, der weniger braucht.',
  ],
  [
    'The better ones are taken by links that need them too: decide which goes first.',
    'Die besseren sind von Verbindungen belegt, die sie auch brauchen: Entscheide, welche vorgeht.',
  ],
  [
    '{x:place} does content protection not at all; free on the same device with 2.2 or newer: {l:labels}.',
    '{x} kann gar keinen Kopierschutz; frei am selben Gerät, mit 2.2 oder neuer: {l}.',
  ],
  [
    '{x:place} does content protection {v:raw} only; free on the same device with 2.2 or newer: {l:labels}.',
    '{x} kann Kopierschutz nur nach {v}; frei am selben Gerät, mit 2.2 oder neuer: {l}.',
  ],
  ['The way to a display leaves {x:place}; {m:part}.', 'Der Weg zu einer Anzeige beginnt an {x.dat}; {m}.'],
  ['such outputs usually carry sound only', 'solche Ausgänge führen meist nur Ton'],
  [
    'outputs for another zone often pass less than the main one',
    'Ausgänge für eine andere Zone lassen oft weniger durch als der Hauptausgang',
  ],
  [
    'Move the plug to {l:labels}, or look up what this output does.',
    'Steck den Stecker um in {l}, oder sieh nach, was dieser Ausgang kann.',
  ],
  ['Look up in the manual what this output does.', 'Sieh in der Anleitung nach, was dieser Ausgang kann.'],

  // cautions.ts
  [
    'The light in an optical cable is invisible and can harm the eye: never look into its end or into the socket it was in.',
    'Das Licht in einem optischen Kabel ist unsichtbar und kann dem Auge schaden: Sieh nie in sein Ende oder in die Buchse, in der es steckte.',
  ],
  [
    'A display may hang high and a projector throws strong light: use a secured ladder and a second person, stay out of the beam and never look into the lens.',
    'Eine Anzeige kann hoch hängen, und ein Projektor wirft starkes Licht: Nimm eine gesicherte Leiter und eine zweite Person, bleib aus dem Strahl und sieh nie in das Objektiv.',
  ],
  [
    'Racks carry mains: leave covers closed, and leave fixed wiring to a licensed electrician.',
    'In Racks ist Netzspannung: Lass Abdeckungen zu und überlass feste Leitungen einer Elektrofachkraft.',
  ],
  [
    'Cable in walls needs the fire rating that local codes ask for; work in walls is for the licensed trade.',
    'Kabel in Wänden brauchen die Brandklasse, die örtliche Vorschriften verlangen; Arbeit in Wänden ist Sache zugelassener Betriebe.',
  ],
  [
    'A cable across a floor trips people: cover or tape it down, and take it up after the test.',
    'Über ein Kabel am Boden stolpert man: Deck es ab oder kleb es fest, und nimm es nach dem Test auf.',
  ],
  [
    "An update can't be undone, and a device that loses power in the middle of it may not start again.",
    'Ein Update lässt sich nicht rückgängig machen, und ein Gerät, dem mittendrin der Strom ausfällt, startet vielleicht nicht mehr.',
  ],
];

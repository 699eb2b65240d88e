import type { Pair } from './template.ts';

/** What the computed budgets say: shared/signal, its link budget, 5 V line and content protection. */
export const signalPairs: readonly Pair[] = [
  // findings.ts
  [
    'Replace the cable by one certified for the rate, or ask for a format that fits.',
    'Ersetz das Kabel durch eines, das für die Rate zertifiziert ist, oder verlang ein Format, das passt.',
  ],
  [
    'Read the EDID at the source and at the display, and see who changes it on the way.',
    'Lies das EDID an der Quelle und an der Anzeige und sieh, wer es unterwegs ändert.',
  ],
  [
    'Set the output to the mode that passes it, use one that does, or ask for a format that fits.',
    'Stell den Ausgang auf die Betriebsart, die es durchlässt, nimm einen, der das kann, oder verlang ein Format, das passt.',
  ],
  [
    'Set the input to the mode that passes it, use one that does, or ask for a format that fits.',
    'Stell den Eingang auf die Betriebsart, die es durchlässt, nimm einen, der das kann, oder verlang ein Format, das passt.',
  ],
  [
    'Ask for a format that exists: there is none with this sampling and these bits.',
    'Verlang ein Format, das es gibt: Mit dieser Abtastung und diesen Bits gibt es keines.',
  ],
  [
    'Power the cable at the end its maker names, or put a switch with a supply of its own before it.',
    'Versorg das Kabel an dem Ende, das der Hersteller nennt, oder setz einen Umschalter mit eigenem Netzteil davor.',
  ],
  [
    'Find out which version each end does, set it where it can be set, or leave the older device out.',
    'Finde heraus, welche Version jedes Ende kann, stell sie ein, wo das geht, oder lass das ältere Gerät weg.',
  ],

  // link-budget/words.ts
  ['There is no way to send {f:format}.', 'Es gibt keinen Weg, {f} zu senden.'],
  ['{n:part}, {g:part}: {s:part}.', '{n}, {g}: {s}.'],
  [
    'This link needs {a:num} Gbit/s of a fixed rate link',
    'Diese Verbindung braucht {a} Gbit/s mit fester Rate',
  ],
  ['This link needs {a:num} Gbit/s', 'Diese Verbindung braucht {a} Gbit/s'],
  ['{g:part}, by TMDS only', '{g}, nur über TMDS'],
  ['the cable is good for {a:num}', 'das Kabel taugt für {a}'],
  ['the EDID that {s:socket} sees admits {a:num}', 'das EDID, das {s} sieht, erlaubt {a}'],
  ['{s:socket} is set to pass no more than {a:num}', '{s} ist auf höchstens {a} eingestellt'],
  ['{s:socket} passes {a:num}', '{s} lässt {a} durch'],
  ['{p:pct} short', 'es fehlen {p}'],
  ['nothing to spare', 'nichts übrig'],
  ['{p:pct} to spare', '{p} übrig'],
  ['{n:part}, but the EDID that {s:socket} sees {r:parts}.', '{n}, aber das EDID, das {s} sieht, {r}.'],
  ['doesn’t offer this size and rate in 4:2:0', 'bietet diese Größe und Rate nicht in 4:2:0 an'],
  ['offers this size and rate in 4:2:0 only', 'bietet diese Größe und Rate nur in 4:2:0 an'],
  ['doesn’t offer this size and rate', 'bietet diese Größe und Rate nicht an'],
  ['doesn’t offer {b:num} bits in {e:encoding}', 'bietet {b} Bit in {e} nicht an'],
  ['doesn’t offer {e:encoding}', 'bietet {e} nicht an'],
  [
    '{g:part}: it goes only compressed, to {b:num} bits a pixel, if the source can.',
    '{g}: Es geht nur komprimiert, auf {b} Bit je Pixel, wenn die Quelle das kann.',
  ],
  [
    'The cable may be good for {a:num}, but {d:parts}: count on {b:num} (assumed), {s:part}.',
    'Das Kabel taugt vielleicht für {a}, aber {d}: Rechne mit {b} (angenommen), {s}.',
  ],
  [
    '{x:bare} may be good for {a:num}, but {d:parts}: count on {b:num} (assumed), {s:part}.',
    '{x} taugt vielleicht für {a}, aber {d}: Rechne mit {b} (angenommen), {s}.',
  ],
  // link-budget/cable.ts
  [
    'extenders are counted with what most of them pass',
    'bei Verlängerungen zählt, was die meisten durchlassen',
  ],
  ['its category isn’t known', 'die Kategorie ist nicht bekannt'],
  ['nobody has seen its certification label', 'niemand hat das Zertifizierungsetikett gesehen'],
  ['its ends were fitted on site', 'die Enden wurden vor Ort montiert'],
  ['it is {l:num} m long, where {m:num} m are counted in full', 'es ist {l} m lang, wo {m} m voll zählen'],
  ['it lies the wrong way round', 'es liegt verkehrt herum'],
  ['an end that needs power has none', 'ein Ende, das Strom braucht, hat keinen'],
  // link-budget/chain-budget.ts
  ['{f:format}: there is no link to judge.', '{f}: Es gibt keine Verbindung zu beurteilen.'],
  [
    '{f:format} fits on every link; the tightest is {x:place}.',
    '{f} passt auf jede Verbindung; am engsten ist {x}.',
  ],
  ['{f:format} can’t be counted on over {x:place}.', 'Mit {f} ist nicht zu rechnen über {x}.'],
  ['{f:format} isn’t offered to the source of {x:place}.', '{f} wird der Quelle nicht angeboten: {x}.'],
  ['{f:format} doesn’t fit {x:place}.', '{f} passt nicht durch {x}.'],

  // power.ts
  [
    '{s:bare} has to supply {a:num} mA at 5 V and no more, {t:part}: {r:part}.',
    '{s} muss {a} mA bei 5 V liefern und nicht mehr, {t}: {r}.',
  ],
  ['{s:bare} supplies {a:num} mA at 5 V, {t:part}: {r:part}.', '{s} liefert {a} mA bei 5 V, {t}: {r}.'],
  ['{s:bare} may take up to {a:num}, {c:part}', '{s} darf bis zu {a} nehmen, {c}'],
  ['{s:bare} takes {a:num}, {c:part}', '{s} nimmt {a}, {c}'],
  ['the cable takes {a:num}', 'das Kabel nimmt {a}'],
  ['the cable takes nothing', 'das Kabel nimmt nichts'],
  ['the cable has a supply of its own', 'das Kabel hat ein eigenes Netzteil'],
  [
    'a passive copper cable takes about {a:num} (assumed)',
    'ein passives Kupferkabel nimmt etwa {a} (angenommen)',
  ],
  [
    'an active copper cable takes about {a:num} (assumed)',
    'ein aktives Kupferkabel nimmt etwa {a} (angenommen)',
  ],
  [
    'an active optical cable takes about {a:num} (assumed)',
    'ein aktives optisches Kabel nimmt etwa {a} (angenommen)',
  ],
  [
    'a twisted-pair extender cable takes about {a:num} (assumed)',
    'eine Verlängerung über verdrillte Paare nimmt etwa {a} (angenommen)',
  ],
  ['{a:num} mA to spare', '{a} mA übrig'],
  ['{a:num} mA short', 'es fehlen {a} mA'],
  [
    'Start-up is when it shows: no picture, or one that drops out.',
    'Es zeigt sich beim Start: kein Bild, oder eines, das aussetzt.',
  ],
  [
    'Power the cable at an end that takes power, or use passive copper from the source to the next device; a source that offers power for cables supplies {a:num} mA.',
    'Versorg das Kabel an einem Ende, das Strom nimmt, oder nimm passives Kupfer von der Quelle zum nächsten Gerät; eine Quelle, die Strom für Kabel anbietet, liefert {a} mA.',
  ],
  [
    'Power {x:place} at an end that takes power, or measure what the source supplies.',
    'Versorg {x} an einem Ende, das Strom nimmt, oder miss, was die Quelle liefert.',
  ],

  // content-protection
  ['Over {x:place} both ends do {v:version}.', 'Über {x} können beide Enden {v}.'],
  [
    'Over {x:place} this content may not go: it asks for 2.2 or newer, and {e:part}.',
    'Über {x} darf dieser Inhalt nicht: Er verlangt 2.2 oder neuer, und {e}.',
  ],
  [
    'Over {x:place} this content may not go: it asks for content protection, and {e:part}.',
    'Über {x} darf dieser Inhalt nicht: Er verlangt Kopierschutz, und {e}.',
  ],
  ['Over {x:place} it isn’t known: {e:part}.', 'Über {x} ist es nicht bekannt: {e}.'],
  ['{s:socket} does none, {e:part}', '{s} kann keinen, {e}'],
  ['{s:socket} isn’t recorded, {e:part}', '{s} ist nicht erfasst, {e}'],
  ['{s:socket} does {v:version}, {e:part}', '{s} kann {v}, {e}'],
  ['{s:socket} does none', '{s} kann keinen'],
  ['{s:socket} isn’t recorded', '{s} ist nicht erfasst'],
  ['{s:socket} does {v:version}', '{s} kann {v}'],
  [
    'Content of stream type 1 from {s:bare} on {d:bare}: every hop allows it.',
    'Inhalt vom Stream-Typ 1 von {s} auf {d}: Jede Strecke lässt ihn zu.',
  ],
  [
    'Content of stream type 1 from {s:bare} on {d:bare}: not known.',
    'Inhalt vom Stream-Typ 1 von {s} auf {d}: nicht bekannt.',
  ],
  [
    'Content of stream type 1 from {s:bare} on {d:bare}: not shown.',
    'Inhalt vom Stream-Typ 1 von {s} auf {d}: wird nicht gezeigt.',
  ],
  [
    'Protected content from {s:bare} on {d:bare}: every hop allows it.',
    'Geschützter Inhalt von {s} auf {d}: Jede Strecke lässt ihn zu.',
  ],
  [
    'Protected content from {s:bare} on {d:bare}: not known.',
    'Geschützter Inhalt von {s} auf {d}: nicht bekannt.',
  ],
  [
    'Protected content from {s:bare} on {d:bare}: not shown.',
    'Geschützter Inhalt von {s} auf {d}: wird nicht gezeigt.',
  ],
  ['{x:place}: {c:part}, {l:num} m.', '{x}: {c}, {l} m.'],
  [
    'Optical cables carry the control lines through electronics, and these fail in this way first.',
    'Optische Kabel führen die Steuerleitungen durch Elektronik, und die versagt so zuerst.',
  ],
  [
    '{s:bare} meets {n:num} {a:devices} on {m:num} {b:levels} behind {x:place}; {d:num} and {l:num} are allowed.',
    '{s} findet hinter {x.dat} {n} {a} auf {m} {b}; erlaubt sind {d} und {l}.',
  ],
  [
    '{s:bare} meets {n:num} {a:devices} on {m:num} {b:levels} behind {x:place}; {d:num} and {l:num} are allowed: too many, and it may show nothing.',
    '{s} findet hinter {x.dat} {n} {a} auf {m} {b}; erlaubt sind {d} und {l}: zu viel, und vielleicht ist nichts zu sehen.',
  ],
];

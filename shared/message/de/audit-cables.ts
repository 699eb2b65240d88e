import type { auditCableCodes } from '../codes/audit-cables.ts';
import type { Sentences } from '../sentences.ts';

const readMarks =
  'Lies die Zeichen an beiden Steckern: Das Ende, das als Quelle bezeichnet ist, kommt an das Gerät näher zur Quelle.';

export const auditCablesDe: Sentences<typeof auditCableCodes> = {
  cableCategoryUnknown: ({ cable }, say) =>
    `Bei ${say.place(cable, 'dative')} ist die Kategorie nicht bekannt.`,
  lookForCertificationLabel: () =>
    'Such das Zertifizierungsetikett am Kabel oder auf der Verpackung, lies es ein und schreib die Kategorie auf.',
  cableCategoryTooLow: ({ cable, category, testedFor, needed }, say) =>
    `${say.start(say.place(cable))} hat die Kategorie ${say.category(category)}, geprüft für ${say.gbps(testedFor)}, zwischen Buchsen, die ${say.gbps(needed)} durchlassen.`,
  replaceByCertifiedCable: ({ rates }, say) =>
    `Ersetz es durch ein Kabel, das für ${say.or(rates.map(say.gbps))} zertifiziert ist.`,
  cableTestedForLess: ({ cable, category, testedFor, needed }, say) =>
    `${say.start(say.place(cable))} hat die Kategorie ${say.category(category)}, geprüft für ${say.gbps(testedFor)}; verlangt werden ${say.gbps(needed)}.`,
  replaceByCertifiedOptical: ({ rates }, say) =>
    `Ersetz es durch ein aktives optisches Kabel, das für ${say.or(rates.map(say.gbps))} zertifiziert ist und dessen Enden in der Fabrik montiert wurden; sieh nach, ob es auch den Tonrückkanal überträgt, wo der gebraucht wird.`,
  cableTooLongFor: ({ cable, construction, length, reach, rate }, say) =>
    `${say.start(say.place(cable))} ist ${say.construction(construction)} und ${say.metres(length)} lang; für ${say.gbps(rate)} taugt so eines bis etwa ${say.metres(reach)}.`,
  cableLongForItsLabel: ({ cable, category, length }, say) =>
    `${say.start(say.place(cable))} ist als zertifiziert für ${say.category(category)} notiert, aber mit ${say.metres(length)} besteht kaum ein Kabel dieser Art die Prüfung.`,
  scanLabelAgain: () =>
    'Lies das Etikett noch einmal ein und sieh nach, ob es zu diesem Kabel und dieser Länge gehört. Wenn nicht, ersetz das Kabel durch eines, das in dieser Länge zertifiziert ist.',
  cableOnCouplers: ({ cable, couplers }, say) =>
    `${say.start(say.place(cable))} ist mit ${couplers} ${say.plural(couplers, 'Kupplung oder Wanddose', 'Kupplungen oder Wanddosen')} zusammengesetzt; jede kostet etwas von seiner Rate.`,
  activeCableOnCouplers: ({ cable, construction }, say) =>
    `${say.start(say.place(cable))} ist ${say.construction(construction)} und aus mehreren Stücken gekuppelt: Die Elektronik erwartet an einem Ende eine Quelle und am anderen eine Anzeige.`,
  layInOnePiece: () => 'Leg stattdessen ein Kabel in der ganzen Länge.',
  extenderRatedForLess: ({ cable, rated, needed }, say) =>
    `${say.start(say.place(cable))} ist für ${say.gbps(rated)} angegeben; verlangt werden ${say.gbps(needed)}.`,
  fitFasterExtender: ({ rates }, say) =>
    `Nimm ein Paar Verlängerungen, das auf diese Länge für ${say.or(rates.map(say.gbps))} angegeben ist, oder leg ein aktives optisches Kabel mit Enden aus der Fabrik.`,
  extenderTooLong: ({ cable, length, reach }, say) =>
    `${say.start(say.place(cable))} geht über ${say.metres(length)}; die Reichweite ist ${say.metres(reach)}.`,
  extenderRateUnknown: ({ cable }, say) =>
    `Welche Rate ${say.place(cable)} durchlässt, ist nicht notiert, und die langsameren lassen nicht durch, was verlangt wird.`,
  lookUpExtenderRate: () =>
    'Sieh nach, welche Rate und welche Länge der Hersteller angibt, und schreib beides auf.',
  extenderSupplyUnknown: ({ cable }, say) => `Niemand hat notiert, wo ${say.place(cable)} versorgt wird.`,
  checkExtenderSupply: () =>
    'Sieh nach, an welchem Ende das Netzteil sitzt, ob es steckt und auch in Bereitschaft der Geräte Strom hat, und schreib es auf.',
  alsoOnLinks: ({ finding, links }, say) =>
    `${say.message(finding)} Dasselbe gilt für ${say.and(links.map((link) => say.place(link, 'accusative')))}.`,
  onAnotherBranch: ({ finding, display }, say) =>
    `${say.message(finding)} Es liegt nicht auf dem Weg zu ${say.place(display, 'dative')}.`,
  cableCertificationUnseen: ({ cable, category }, say) =>
    `${say.start(say.place(cable))} soll ${say.category(category)} sein, aber niemand hat das Zertifizierungsetikett gesehen.`,
  findCertificationLabel: () =>
    'Such das Etikett und lies es ein. Gibt es keines, ersetz das Kabel durch ein zertifiziertes.',
  cableTooShort: ({ cable, length, shortest }, say) =>
    `${say.start(say.place(cable))} ist nur ${say.metres(length)} lang; unter etwa ${say.metres(shortest)} machen Kabel öfter Ärger.`,
  replaceByLongerCable: ({ shortest }, say) =>
    `Ersetz es durch ein zertifiziertes Kabel von mindestens etwa ${say.metres(shortest)}.`,
  cableTooLong: ({ cable, construction, length, longest }, say) =>
    `${say.start(say.place(cable))} ist ${say.construction(construction)} und ${say.metres(length)} lang; Kupfer taugt für etwa ${say.metres(longest)}.`,
  moveSourceNearer: () =>
    'Stell die Quelle näher, oder geh über einen Umschalter oder Receiver und leg von dort ein aktives optisches Kabel mit Enden aus der Fabrik.',
  replaceByFactoryFittedOptical: () =>
    'Ersetz es durch ein aktives optisches Kabel, dessen Enden in der Fabrik montiert wurden.',
  cableEndsFittedOnSite: ({ cable }, say) =>
    `Bei ${say.place(cable, 'dative')} wurden die Enden vor Ort montiert.`,
  cableEndsUnknown: ({ cable }, say) =>
    `Bei ${say.place(cable, 'dative')} ist nicht bekannt, ob die Enden in der Fabrik montiert wurden.`,
  lookAtBothEnds: () => 'Sieh dir beide Enden an und schreib es auf.',
  opticalFromSourceFed: ({ cable }, say) =>
    `${say.start(say.place(cable))} ist aktiv optisch und kommt direkt von einer Quelle; die Versorgung ist in Ordnung, soweit notiert, und doch fällt der erste Verdacht darauf.`,
  opticalFromSourceUnderfed: ({ cable, supply, draw }, say) =>
    `${say.start(say.place(cable))} ist aktiv optisch und kommt direkt von einer Quelle: Deren 5-V-Leitung liefert ${say.number(supply)} mA, wo ${say.number(draw)} mA gezogen werden.`,
  opticalFromSource: ({ cable }, say) =>
    `${say.start(say.place(cable))} ist aktiv optisch und kommt direkt von einer Quelle: Die 5-V-Leitung einer Quelle kann so eines oft nicht speisen.`,
  checkSupplyAtSource: () =>
    'Prüf die Versorgung am Quellenende und halt für einen Test ein passives Kabel bereit.',
  feedOpticalAnotherWay: () =>
    'Geh von der Quelle mit einem passiven Kabel in einen Umschalter, Receiver oder Prozessor, oder versorg das optische Kabel am Quellenende mit einem eigenen Netzteil.',
  twistedPairBestAvoided: ({ cable }, say) =>
    `${say.start(say.place(cable, 'accusative'))} meidet man am besten: Das bringt eigene Elektronik, Netzteile und Aushandlungen in den Weg.`,
  replaceTwistedPair: () =>
    'Nimm stattdessen ein aktives optisches Kabel mit Enden aus der Fabrik, oder leg für einen Test eines hinüber.',
  cableReversed: ({ cable }, say) => `${say.start(say.place(cable))} liegt verkehrt herum.`,
  turnCableRound: () => `Schließ es andersherum an. ${readMarks}`,
  swapExtenderEnds: () =>
    'Tausch die beiden Kästen mit ihren Netzteilen: Der Sender gehört an das Gerät näher an der Quelle, der Empfänger näher an die Anzeige.',
  activeCableDirectionUnknown: ({ cable }, say) =>
    `Niemand hat notiert, wie herum ${say.place(cable)} liegt, und es ist aktiv: Verkehrt herum lässt es nichts durch, oder nur manchmal.`,
  readMarksAtPlugs: () => readMarks,
  cableDirectionUnknown: ({ cable }, say) => `Es ist nicht bekannt, ob ${say.place(cable)} gerichtet ist.`,
  lookForArrow: () => `Such einen Pfeil oder ein bezeichnetes Ende. ${readMarks}`,
  activeCableNotDirectional: ({ cable }, say) =>
    `${say.start(say.place(cable))} ist als nicht gerichtet notiert, aber aktive Kabel sind es.`,
  readMarksAndCorrect: () => `${readMarks} Dann berichtige den Eintrag.`,
  cableEndWithoutPower: ({ cable, at }, say) =>
    `${say.start(say.place(cable))} braucht an ${say.device(at)} Strom und hat keinen.`,
  plugInSupply: ({ at }, say) =>
    `Schließ an ${say.device(at)} das Netzteil an, das der Hersteller verlangt, nicht an einer Dose, die mit dem Gerät ausgeht.`,
  cableEndPowerUnknown: ({ cable, at }, say) =>
    `${say.start(say.place(cable))} braucht an ${say.device(at)} Strom; niemand hat notiert, ob er da ist.`,
  checkSupply: ({ at }, say) =>
    `Prüf die Versorgung an ${say.device(at)}, auch während die Geräte in Bereitschaft sind.`,
  plugNotSeated: ({ cable, at }, say) =>
    `${say.start(say.place(cable))} steckt nicht ganz an ${say.and(at.map(say.device))}.`,
  plugSeatUnchecked: ({ cable, at }, say) =>
    `Niemand hat geprüft, ob ${say.place(cable)} an ${say.and(at.map(say.device))} fest steckt.`,
  pushPlugsHome: () =>
    'Drück beide Stecker ganz hinein, sieh nach, ob ein Gehäuse verbogen ist oder das Kabel unter Zug steht, und nimm den Zug weg.',
};

import type { lookCodes } from '../codes/looks.ts';
import type { Sentences } from '../sentences.ts';
import { deTerms } from './terms.ts';

const moment = (isBad: boolean): string =>
  isBad ? 'während der Fehler da ist' : 'in einem guten Augenblick';

export const looksDe: Sentences<typeof lookCodes> = {
  signalAbsent: () => 'kein Signal',
  signalOf: ({ parts }, say) => parts.map(say.message).join(', '),
  signalNotTold: () => 'keine Angabe',
  seenResolution: ({ widthPx, heightPx }) => `${widthPx}×${heightPx}`,
  seenRate: ({ refreshHz }, say) => `${say.number(refreshHz, 3)} Hz`,
  seenDepth: ({ bits }) => `${bits} Bit`,
  seenEncoding: ({ encoding }) => encodings[encoding],
  seenHdr: ({ hdr }) => deTerms.hdrKind[hdr],
  seenProtection: ({ version }) => (version === 'none' ? 'kein Kopierschutz' : `Kopierschutz ${version}`),
  seenLinkRate: ({ rate }, say) => `Verbindung mit ${say.gbps(rate)}`,
  intendedIs: ({ conversion }) => deTerms.conversion[conversion],
  portIsSetTo: ({ mode }, say) => `eingestellt auf ${say.mode(mode)}`,
  portIsAutomatic: () => 'eingestellt auf automatisch',
  portHasNothingToSet: () => 'dort ist nichts einzustellen',

  'log/signalRead': ({ device, isBad, receives, sends, intended }, say) =>
    `Abgelesen an ${say.place(device, 'dative')}, ${moment(isBad)}: kommt an: ${say.message(receives)}; geht weiter: ${say.message(sends)}.${
      intended.length === 0 ? '' : ` So gewollt: ${say.and(intended.map(say.message))}.`
    }`,
  'log/signalAsBefore': ({ device, isBad }, say) =>
    `Abgelesen an ${say.place(device, 'dative')}, ${moment(isBad)}: dasselbe wie vorher.`,
  'log/menuTried': ({ device, survives, keepsFormat }, say) =>
    `Menü von ${say.place(device, 'dative')} ausprobiert: bleibt ohne Eingangssignal: ${answers[survives]}; behält das Bildformat: ${answers[keepsFormat]}.`,
  'log/portModeSeen': ({ port, found }, say) =>
    `Nachgesehen, ${say.place(port, 'nominative')}: ${say.message(found)}.`,
  'log/settingSeen': ({ device, setting, value, shouldBe }, say) =>
    `Nachgesehen an ${say.place(device, 'dative')}: ${say.quoted(setting)} steht auf ${shown(value, say)}${
      shouldBe === null ? '' : `, richtig wäre ${shown(shouldBe, say)}`
    }.`,
  'log/witnessShows': ({ witness }, say) =>
    `${say.start(say.place(witness))} zeigt den Fehler im selben Augenblick.`,
  'log/witnessDoesNotShow': ({ witness }, say) =>
    `${say.start(say.place(witness))} zeigt den Fehler nicht im selben Augenblick.`,
  'log/witnessCannotSay': ({ witness }, say) =>
    `Niemand kann sagen, ob ${say.place(witness)} den Fehler im selben Augenblick zeigt.`,
  'log/lookWithdrawn': ({ reason }, say) =>
    `Etwas, wonach gesehen wurde, zählt nicht mehr: ${say.text(reason)}`,
  'log/goneWithoutSide': ({ reason }, say) => `Die Arbeit geht ohne Seite weiter: ${say.text(reason)}`,

  lookIdTaken: () => 'Unter dieser Kennung wurde schon nachgesehen.',
  lookUnknown: () => 'Unter dieser Kennung wurde nichts nachgesehen.',
  lookWithdrawnAlready: () => 'Das zählt schon nicht mehr.',
  noLookToWithdraw: () => 'Es wurde nichts nachgesehen, das noch zählt.',
  nothingReadBefore: () => 'An diesem Gerät wurde noch nichts abgelesen: lies ab, was es jetzt anzeigt.',
  noWitness: () =>
    'Ein Zeuge ist ein anderer Bildschirm oder eine andere Quelle, die einen Teil des Weges mit dem Gerät teilt, an dem der Fehler zu sehen ist.',
  noWitnessAt: ({ device }, say) => `Kein Zeuge hat etwas über ${say.place(device, 'accusative')} gesagt.`,
  witnessesContradict: ({ device }, say) =>
    `Was Zeugen rund um ${say.place(device, 'accusative')} zeigen, widerspricht sich.`,
  traceSaysNothing: ({ device }, say) =>
    `Was abgelesen wurde, sagt nichts über die Seite an ${say.place(device, 'dative')}: lies ab, was dort ankommt und weitergeht, während der Fehler da ist.`,
  menuFallsWithInput: ({ device }, say) =>
    `Das Menü von ${say.place(device, 'dative')} fällt mit dem Eingangssignal aus; dass es verschwand, sagt nichts über die Seite.`,
  menuQualitiesNotKnown: ({ device }, say) =>
    `Ob das Menü von ${say.place(device, 'dative')} ohne Eingangssignal bleibt und das Bildformat behält, ist nicht bekannt; dass es verschwand, sagt deshalb nichts über die Seite. Zieh den Eingang einmal ab, sieh hin, und halte es fest.`,
  sideIsKnownAlready: () => 'Eine Seite ist bekannt: geh damit weiter, oder nimm sie zurück.',
  lookAtPortModeFirst: () => 'Was dort eingestellt ist, weiß niemand: sieh zuerst im Menü des Geräts nach.',

  receivesRightAt: ({ place }, say) => `An ${say.place(place, 'dative')} kommt an, was ankommen soll`,
  receivesWrongAt: ({ place }, say) => `An ${say.place(place, 'dative')} kommt nicht an, was ankommen soll`,
  sendsRightAt: ({ place }, say) => `${say.start(say.place(place))} gibt weiter, was es soll`,
  sendsWrongAt: ({ place }, say) => `${say.start(say.place(place))} gibt nicht weiter, was es soll`,
  witnessShowsIt: ({ place }, say) => `${say.start(say.place(place))} zeigt es im selben Augenblick`,
  witnessShowsItNot: ({ place }, say) => `${say.start(say.place(place))} zeigt es nicht im selben Augenblick`,
  portSetLowAt: ({ place }, say) => `${say.start(say.place(place))} ist niedriger eingestellt, als es ginge`,
  portSetRightAt: ({ place }, say) => `${say.start(say.place(place))} ist so hoch eingestellt, wie es geht`,
  settingWrongAt: ({ place }, say) =>
    `Eine Einstellung an ${say.place(place, 'dative')} ist nicht, wie sie sein soll`,

  readSignalAt: ({ place, fields, isBad }, say) =>
    `Lies auf der Anzeigeseite von ${say.place(place, 'dative')} ab, ${moment(isBad)}, was ankommt und was weitergeht: ${say.and(fields.map((field) => deTerms.signalField[field]))}. Ein Foto der Seite genügt.`,
  readSignalWhy: () =>
    'Das halbiert, was von der Kette übrig ist: Der Fehler liegt hinter dem letzten Gerät, an dem alles stimmt, und vor dem ersten, an dem es nicht mehr stimmt.',
  tryMenuAt: ({ place }, say) =>
    `Ruf das Menü von ${say.place(place, 'dative')} auf, zieh den Eingang einmal ab und sieh hin: Bleibt das Menü? Und ändert sich das Bildformat, wenn das Menü kommt?`,
  tryMenuWhy: () =>
    'Viele Menüs fallen mit dem Eingangssignal aus. Solange das nicht bekannt ist, sagt ein verschwundenes Menü nichts.',
  askWitness: ({ place, beside }, say) =>
    `Frag, und ändere nichts: Wenn der Fehler an ${say.place(beside, 'dative')} kommt, zeigt ${say.place(place)} ihn im selben Augenblick?`,
  askWitnessWhy: () =>
    'Was ihn auch zeigt, teilt den schuldigen Abschnitt; was ihn nicht zeigt, entlastet den gemeinsamen.',
  lookAtPortMode: ({ place }, say) =>
    `Sieh im Menü nach, worauf ${say.place(place)} eingestellt ist. Das dauert etwa zwei Minuten.`,
  lookAtPortModeWhy: () => 'Eine Einstellung, nach der niemand gesehen hat, kommt vor jedem Tausch.',
  traceFoundDevice: ({ place }, say) =>
    `An ${say.place(place, 'dative')} kommt an, was soll, und es geht nicht weiter, was soll: Es liegt an diesem Gerät, oder was folgt, hat es ihm so gesagt.`,
  traceFoundLink: ({ place }, say) =>
    `Was an einem Ende hineingeht, kommt am anderen nicht heraus: ${say.place(place)}.`,
  concludeByTraceAt: ({ place }, say) =>
    `Schließ aus dem Abgelesenen auf die Seite an ${say.place(place, 'dative')}.`,
  concludeByWitnessAt: ({ place }, say) =>
    `Schließ aus dem, was der Zeuge zeigt, auf die Seite an ${say.place(place, 'dative')}.`,
  noSideCanBeProven: () =>
    'Kein Menü, keine Anzeigeseite und kein Zeuge kann hier eine Seite zeigen. Die Arbeit kann ohne weitergehen; der Bericht sagt es dazu.',
  noSideReason: () => 'kein Menü, keine Anzeigeseite und kein Zeuge kann es sagen',
};

const encodings = { rgb: 'RGB', ycbcr444: 'YCbCr 4:4:4', ycbcr422: 'YCbCr 4:2:2', ycbcr420: 'YCbCr 4:2:0' };
const answers = { yes: 'ja', no: 'nein', unknown: 'nicht bekannt' };
const shown = (value: string | number | boolean, say: { quoted(given: string): string }): string => {
  if (typeof value === 'boolean') return value ? 'ein' : 'aus';
  return typeof value === 'number' ? String(value) : say.quoted(value);
};

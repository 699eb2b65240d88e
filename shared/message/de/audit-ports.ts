import type { auditPortCodes } from '../codes/audit-ports.ts';
import type { Sentences } from '../sentences.ts';

export const auditPortsDe: Sentences<typeof auditPortCodes> = {
  portSetAboveHighest: ({ port, set, highest }, say) =>
    `${say.start(say.place(port))} ist mit ${say.mode(set)} notiert, mehr als die höchste Betriebsart, ${say.mode(highest)}.`,
  lookUpPortModes: () => 'Sieh beides im Menü und in der Anleitung nach und berichtige den Eintrag.',
  portSetTooLow: ({ port, set, needed }, say) =>
    `${say.start(say.place(port))} steht auf ${say.mode(set)}, aber beide Enden dieser Verbindung lassen ${say.gbps(needed)} durch.`,
  portSetBelowNeed: ({ port, set, needed }, say) =>
    `${say.start(say.place(port))} ist auf ${say.mode(set)} eingestellt; verlangt werden ${say.gbps(needed)}, und beide Enden dieser Verbindung könnten das.`,
  setPortMode: ({ needed }, say) =>
    `Schreib die Einstellung auf, wie du sie vorfindest, dann stell die Buchse auf die Betriebsart, die ${say.gbps(needed)} durchlässt.`,
  portOfLowerRate: ({ port, passes, better }, say) =>
    `${say.start(say.place(port))} lässt höchstens ${say.gbps(passes)} durch; ${say.and(better.map(say.label))} am selben Gerät ${say.plural(better.length, 'lässt', 'lassen')} mehr durch.`,
  movePlug: ({ to }, say) => `Steck den Stecker um in ${say.or(to.map(say.label))}.`,
  swapPlugs: ({ with: others }, say) =>
    `Tausch ihn mit dem Stecker in ${say.or(others.map(say.label))}, der weniger braucht.`,
  decideWhichPlugGoesFirst: () =>
    'Die besseren sind von Verbindungen belegt, die sie auch brauchen: Entscheide, welche vorgeht.',
  portWithoutProtection: ({ port, better }, say) =>
    `${say.start(say.place(port))} kann gar keinen Kopierschutz; frei am selben Gerät, mit 2.2 oder neuer: ${say.and(better.map(say.label))}.`,
  portOfOlderProtection: ({ port, version, better }, say) =>
    `${say.start(say.place(port))} kann Kopierschutz nur nach ${version}; frei am selben Gerät, mit 2.2 oder neuer: ${say.and(better.map(say.label))}.`,
  outputForSound: ({ output }, say) =>
    `Der Weg zu einer Anzeige beginnt an ${say.place(output, 'dative')}; solche Ausgänge führen meist nur Ton.`,
  outputForAnotherZone: ({ output }, say) =>
    `Der Weg zu einer Anzeige beginnt an ${say.place(output, 'dative')}; Ausgänge für eine andere Zone lassen oft weniger durch als der Hauptausgang.`,
  movePlugOrLookUp: ({ to }, say) =>
    `Steck den Stecker um in ${say.or(to.map(say.label))}, oder sieh nach, was dieser Ausgang kann.`,
  lookUpOutput: () => 'Sieh in der Anleitung nach, was dieser Ausgang kann.',
};

import type { LanguageTag } from '../../../../shared/contract/language-names.ts';

/** A group of figures: what it is called, and what its figures say and are counted in. */
type SectionWords = { title: string; about: string };
export type FigureWords = {
  sections: Record<string, SectionWords>;
  /** Figures that stand by themselves, by their whole path. */
  whole: Record<string, string>;
  /** Parts of a path that no list of the contract names; with its group before it, where it is called otherwise there. */
  parts: Record<string, string>;
};

const en: FigureWords = {
  sections: {
    linkWeights: {
      title: 'How often cables fail',
      about: 'Weights before anything is known of the case. Only how they compare with each other counts.',
    },
    deviceWeights: {
      title: 'How often devices fail',
      about: 'Weights before anything is known of the case, beside those of cables.',
    },
    chainWeights: {
      title: 'How often no one part is at fault',
      about: 'Weights of what the whole chain does together, or what works on it from outside.',
    },
    symptomChances: {
      title: 'What each cause looks like',
      about: 'Chance, 0 to 1, that a cause shows as this symptom.',
    },
    contentChances: {
      title: 'With which content each cause shows',
      about: 'Chance, 0 to 1, that a cause shows with this content and no other.',
    },
    patternChances: {
      title: 'How each cause comes',
      about: 'Chance, 0 to 1, that a cause comes in this way.',
    },
    triggerChances: {
      title: 'What brings each cause on',
      about: 'Chance, 0 to 1, that a cause which comes on a trigger comes on this one.',
    },
    onlyWithFactors: {
      title: 'When it comes with one title or application only',
      about: 'What the weight of a cause is multiplied by.',
    },
    changedFactors: {
      title: 'When something was changed before it began',
      about: 'What the weight of a cause is multiplied by.',
    },
    historyFactors: {
      title: 'When it worked before, or never did',
      about: 'What the weight of a cause is multiplied by.',
    },
    weighing: {
      title: 'What else weighs',
      about: 'Shares and chances are from 0 to 1; all others multiply a weight.',
    },
    effects: {
      title: 'What each change keeps away',
      about:
        'Chance, 0 to 1, that the fault stays away with the change in place, by cause and by where it lies.',
    },
    provocations: {
      title: 'What brings a fault out',
      about: 'Chance, 0 to 1, that the fault comes more often meanwhile, by cause and by where it lies.',
    },
    changeMinutes: {
      title: 'How long each change takes',
      about: 'Minutes to make it, and to put it back.',
    },
    coincidence: {
      title: 'A change that has nothing to do with it',
      about: 'Chance, 0 to 1, that the fault stays away all the same, since things were moved.',
    },
    menuStays: {
      title: 'What a device’s menu tells',
      about:
        'Chance, 0 to 1, that the menu stays in the picture while the fault is there, by where the fault lies.',
    },
    readings: {
      title: 'What a status page tells',
      about:
        'Chance, 0 to 1, that a page shows something wrong while the fault is there, by where the fault lies.',
    },
    witnesses: {
      title: 'What another display or source tells',
      about: 'Chance, 0 to 1, that it shows the fault at the same moment, by where the fault lies.',
    },
    facts: {
      title: 'What logs, EDIDs and settings tell',
      about: 'What the likelihood of a cause is multiplied by, at the part where it was read.',
    },
    effort: { title: 'How long the rest of the work takes', about: 'Minutes.' },
    planning: {
      title: 'When looking further is no longer worth it',
      about: 'Levels and chances are from 0 to 1; times are in minutes, hours or days as each says.',
    },
  },
  whole: {
    'weighing/outsideShare/share': 'Share of faults that the model knows nothing of',
    'weighing/thins/share': 'Share of changes that only thin out the fault they are made against',
    'weighing/thins/left': 'What such a change leaves of how often the fault comes',
    'weighing/mistaken/share':
      'How often something else is taken for a fault that is away, against how often the fault comes',
    'weighing/besideThePath/edid': 'EDID handling on a branch beside the picture’s way',
    'weighing/besideThePath/contentProtection': 'Content protection on a branch beside the picture’s way',
    'weighing/besideThePath/any': 'Anything else on a branch beside the picture’s way',
    'weighing/age/contactPerYear': 'Contact of a cable, for each year it has lain',
    'weighing/age/highest': 'The most that age multiplies a cable’s contact by',
    'weighing/coupler/free': 'A coupler in a cable that lies free',
    'weighing/coupler/inConduit': 'A coupler in a cable in a conduit',
    'weighing/coupler/inWall': 'A coupler in a cable in a wall',
    'weighing/activeCableOnSource/fiveVolt': 'A source’s 5 V line with an active cable on it',
    'weighing/finding/mustFix': 'What the audit says must be put right',
    'weighing/finding/shouldFix': 'What the audit says should be put right',
    'weighing/finding/note': 'What the audit notes',
    'weighing/headroom/short': 'A cable that carries less than is asked of it',
    'weighing/headroom/under10': 'A cable with less than 10 % to spare',
    'weighing/headroom/under30': 'A cable with less than 30 % to spare',
    'weighing/headroom/under100': 'A cable with less than 100 % to spare',
    'weighing/headroom/ample': 'A cable with more than 100 % to spare',
    'weighing/reports/weight': 'What an occurrence counts for that is reported and was not watched',
    'weighing/logsShow/chance': 'Chance that a device’s log shows the fault',
    'weighing/sources/allAffectedOnly':
      'Chance of these sources: the part lies on the way of all of them and no other',
    'weighing/sources/unaffectedToo': 'Chance of these sources: it lies on the way of others too',
    'weighing/sources/unaffectedTooByRate':
      'Chance of these sources: on the way of others too, and the rate matters',
    'weighing/sources/someAffected': 'Chance of these sources: it lies on the way of some of them',
    'weighing/sources/none': 'Chance of these sources: it lies on the way of none',
    'weighing/trust/enteredLate': 'What a change counts for that was entered afterwards',
    'weighing/trust/earlierRound': 'What an earlier round counts for',
    'weighing/trust/perhapsTwo': 'What counts that was seen while there were perhaps two faults',
    'effort/menu/setup': 'Putting up a menu',
    'effort/menu/restore': 'Closing a menu',
    'effort/installedSource/setup': 'Going over to a source that is there',
    'effort/installedSource/restore': 'Going back from it',
    'effort/broughtSource/setup': 'Connecting a source that was brought',
    'effort/broughtSource/restore': 'Disconnecting it',
    'effort/overDays/diary': 'Opening a client’s diary and explaining it',
    'effort/overDays/logs': 'Fetching and reading a device’s log',
    'effort/overDays/unattended': 'Leaving a change in between visits',
    'effort/overDays/remoteStep': 'Guiding a client through a step',
    'effort/overDays/travel': 'A drive to the site',
    'planning/naming/stopAt': 'How likely a suspect has to be to be named',
    'planning/naming/priorDoubt': 'Factor by which the odds from before the first test may be wrong',
    'planning/furtherWatch/riskShare': 'A watch after “cleared” is for this share of the risk',
    'planning/escalation/minutes': 'Handing the case over is worth so many minutes',
    'planning/day/minutes': 'A day with the fault is worth so many minutes to the client',
    'planning/use/hoursPerDay': 'Hours a day in which the chain is used',
    'planning/handOver/minutes': 'Minutes of work to hand the case over',
    'planning/handOver/days': 'Days until second line answers',
    'planning/handOver/sureness': 'Chance that second line’s answer names the cause',
    'planning/twoFaults/chance': 'Share of tickets with two faults that look like one',
    'planning/oneTry/minutes': 'Minutes for one try of a trigger',
  },
  parts: {
    any: 'any cause not named beside it',
    other: 'any other cause',
    'contentChances/any': 'any content',
    each: 'a chain',
    highRateOnly: 'high rate or resolution only',
    protectedOnly: 'protected content only',
    always: 'there all the time',
    trigger: 'on a trigger',
    random: 'at random',
    bursts: 'in bursts',
    warm: 'only once warm',
    neverWorked: 'it never worked',
    workedBefore: 'it worked before',
    target: 'at the part itself',
    ends: 'at what it is plugged into',
    between: 'between the two sources and where their ways meet',
    upstream: 'before it',
    downstream: 'behind it',
    anywhere: 'anywhere on the way',
    whole: 'in the chain as a whole',
    stays: 'the fault stays away',
    apart: 'elsewhere',
    own: 'in the device itself',
    upstreamSurvives: 'before it, and its menu is known to stay',
    notKnown: 'menus that vanish whatever is at fault',
    misread: 'an occurrence is read wrongly',
    receives: 'in what it receives',
    sends: 'in what it sends',
    outside: 'not in the model',
    shared: 'on the way that both share',
    setup: 'to make it',
    restore: 'to put it back',
    pullThroughConduit: 'A cable pulled through a conduit',
    riskMin: 'What a mishap costs on average',
    edidReadFailed: 'An EDID could not be read',
    edidDiffers: 'An EDID is another than it was',
    authenticationFailed: 'Authentication failed',
    linkFellBack: 'A link fell back to a lower rate',
    hotPlugDropped: 'Hot plug went',
    syncLost: 'Sync went',
    restarted: 'A device started again',
    formatChanged: 'The format changed',
    portSetLow: 'A port was seen in too low a mode',
    portSetRight: 'A port was seen in the right mode',
    settingWrong: 'A setting was seen wrong',
  },
};

const de: FigureWords = {
  sections: {
    linkWeights: {
      title: 'Wie oft Kabel ausfallen',
      about: 'Gewichte, bevor etwas über den Fall bekannt ist. Nur ihr Verhältnis zählt.',
    },
    deviceWeights: {
      title: 'Wie oft Geräte ausfallen',
      about: 'Gewichte, bevor etwas über den Fall bekannt ist, neben denen der Kabel.',
    },
    chainWeights: {
      title: 'Wie oft kein einzelner Teil schuld ist',
      about: 'Gewichte dessen, was die ganze Kette zusammen tut oder was von außen auf sie wirkt.',
    },
    symptomChances: {
      title: 'Wie sich jede Ursache zeigt',
      about: 'Wahrscheinlichkeit von 0 bis 1, dass eine Ursache dieses Symptom macht.',
    },
    contentChances: {
      title: 'Bei welchem Inhalt sich jede Ursache zeigt',
      about: 'Wahrscheinlichkeit von 0 bis 1, dass sich eine Ursache nur bei diesem Inhalt zeigt.',
    },
    patternChances: {
      title: 'Wie jede Ursache kommt',
      about: 'Wahrscheinlichkeit von 0 bis 1, dass eine Ursache so kommt.',
    },
    triggerChances: {
      title: 'Was jede Ursache auslöst',
      about: 'Wahrscheinlichkeit von 0 bis 1, dass es dieser Auslöser ist, wo es einen gibt.',
    },
    onlyWithFactors: {
      title: 'Wenn es nur bei einem Titel oder einer App kommt',
      about: 'Womit das Gewicht einer Ursache malgenommen wird.',
    },
    changedFactors: {
      title: 'Wenn vorher etwas geändert wurde',
      about: 'Womit das Gewicht einer Ursache malgenommen wird.',
    },
    historyFactors: {
      title: 'Wenn es schon ging, oder nie',
      about: 'Womit das Gewicht einer Ursache malgenommen wird.',
    },
    weighing: {
      title: 'Was sonst noch wiegt',
      about: 'Anteile und Wahrscheinlichkeiten gehen von 0 bis 1; alles andere nimmt ein Gewicht mal.',
    },
    effects: {
      title: 'Was jede Änderung fernhält',
      about: 'Wahrscheinlichkeit von 0 bis 1, dass der Fehler wegbleibt, nach Ursache und Ort.',
    },
    provocations: {
      title: 'Was einen Fehler hervorlockt',
      about: 'Wahrscheinlichkeit von 0 bis 1, dass der Fehler dabei öfter kommt, nach Ursache und Ort.',
    },
    changeMinutes: {
      title: 'Wie lange jede Änderung dauert',
      about: 'Minuten, sie zu machen und zurückzunehmen.',
    },
    coincidence: {
      title: 'Eine Änderung, die nichts damit zu tun hat',
      about: 'Wahrscheinlichkeit von 0 bis 1, dass der Fehler trotzdem wegbleibt, weil etwas bewegt wurde.',
    },
    menuStays: {
      title: 'Was das Menü eines Geräts sagt',
      about:
        'Wahrscheinlichkeit von 0 bis 1, dass das Menü im Bild bleibt, solange der Fehler da ist, nach Ort.',
    },
    readings: {
      title: 'Was eine Statusseite sagt',
      about:
        'Wahrscheinlichkeit von 0 bis 1, dass eine Seite etwas Falsches zeigt, solange der Fehler da ist, nach Ort.',
    },
    witnesses: {
      title: 'Was ein anderer Bildschirm oder eine andere Quelle sagt',
      about: 'Wahrscheinlichkeit von 0 bis 1, dass sie den Fehler im selben Moment zeigen, nach Ort.',
    },
    facts: {
      title: 'Was Logs, EDIDs und Einstellungen sagen',
      about:
        'Womit die Wahrscheinlichkeit einer Ursache malgenommen wird, an dem Teil, an dem es gelesen wurde.',
    },
    effort: { title: 'Wie lange die übrige Arbeit dauert', about: 'Minuten.' },
    planning: {
      title: 'Wann weiter zu suchen nicht mehr lohnt',
      about:
        'Schwellen und Wahrscheinlichkeiten gehen von 0 bis 1; Zeiten in Minuten, Stunden oder Tagen, wie es dasteht.',
    },
  },
  whole: {
    'weighing/outsideShare/share': 'Anteil der Fehler, von denen das Modell nichts weiß',
    'weighing/thins/share': 'Anteil der Änderungen, mit denen ihr Fehler nur seltener kommt',
    'weighing/thins/left': 'Was eine solche Änderung von der Häufigkeit des Fehlers übrig lässt',
    'weighing/mistaken/share':
      'Wie oft anderes für einen Fehler gehalten wird, der weg ist, gegen die Häufigkeit des Fehlers',
    'weighing/besideThePath/edid': 'EDID-Behandlung an einem Zweig neben dem Weg des Bildes',
    'weighing/besideThePath/contentProtection': 'Kopierschutz an einem Zweig neben dem Weg des Bildes',
    'weighing/besideThePath/any': 'Alles andere an einem Zweig neben dem Weg des Bildes',
    'weighing/age/contactPerYear': 'Kontakt eines Kabels, für jedes Jahr, das es liegt',
    'weighing/age/highest': 'Womit das Alter den Kontakt eines Kabels höchstens malnimmt',
    'weighing/coupler/free': 'Eine Kupplung in einem frei liegenden Kabel',
    'weighing/coupler/inConduit': 'Eine Kupplung in einem Kabel im Leerrohr',
    'weighing/coupler/inWall': 'Eine Kupplung in einem Kabel in der Wand',
    'weighing/activeCableOnSource/fiveVolt': 'Die 5-V-Leitung einer Quelle mit einem aktiven Kabel daran',
    'weighing/finding/mustFix': 'Was laut Prüfung behoben werden muss',
    'weighing/finding/shouldFix': 'Was laut Prüfung behoben werden sollte',
    'weighing/finding/note': 'Was die Prüfung anmerkt',
    'weighing/headroom/short': 'Ein Kabel, das weniger trägt, als verlangt wird',
    'weighing/headroom/under10': 'Ein Kabel mit weniger als 10 % Reserve',
    'weighing/headroom/under30': 'Ein Kabel mit weniger als 30 % Reserve',
    'weighing/headroom/under100': 'Ein Kabel mit weniger als 100 % Reserve',
    'weighing/headroom/ample': 'Ein Kabel mit mehr als 100 % Reserve',
    'weighing/reports/weight': 'Was ein Auftreten zählt, das gemeldet und nicht beobachtet wurde',
    'weighing/logsShow/chance': 'Wahrscheinlichkeit, dass das Log eines Geräts den Fehler zeigt',
    'weighing/sources/allAffectedOnly':
      'Wahrscheinlichkeit dieser Quellen: Der Teil liegt auf dem Weg von allen und keiner anderen',
    'weighing/sources/unaffectedToo':
      'Wahrscheinlichkeit dieser Quellen: Er liegt auch auf dem Weg von anderen',
    'weighing/sources/unaffectedTooByRate':
      'Wahrscheinlichkeit dieser Quellen: auch auf dem Weg von anderen, und die Datenrate zählt',
    'weighing/sources/someAffected': 'Wahrscheinlichkeit dieser Quellen: Er liegt auf dem Weg von einigen',
    'weighing/sources/none': 'Wahrscheinlichkeit dieser Quellen: Er liegt auf dem Weg von keiner',
    'weighing/trust/enteredLate': 'Was eine Änderung zählt, die nachgetragen wurde',
    'weighing/trust/earlierRound': 'Was eine frühere Runde zählt',
    'weighing/trust/perhapsTwo': 'Was zählt, was bei vielleicht zwei Fehlern gesehen wurde',
    'effort/menu/setup': 'Ein Menü aufrufen',
    'effort/menu/restore': 'Ein Menü schließen',
    'effort/installedSource/setup': 'Zu einer vorhandenen Quelle wechseln',
    'effort/installedSource/restore': 'Von ihr zurückwechseln',
    'effort/broughtSource/setup': 'Eine mitgebrachte Quelle anschließen',
    'effort/broughtSource/restore': 'Sie wieder abnehmen',
    'effort/overDays/diary': 'Ein Tagebuch für den Kunden öffnen und erklären',
    'effort/overDays/logs': 'Das Log eines Geräts holen und lesen',
    'effort/overDays/unattended': 'Eine Änderung zwischen Besuchen belassen',
    'effort/overDays/remoteStep': 'Einen Kunden durch einen Schritt führen',
    'effort/overDays/travel': 'Eine Fahrt zum Ort',
    'planning/naming/stopAt': 'Wie wahrscheinlich ein Verdacht sein muss, um genannt zu werden',
    'planning/naming/priorDoubt': 'Faktor, um den die Aussichten vor dem ersten Test falsch sein können',
    'planning/furtherWatch/riskShare': 'Eine Beobachtung nach „behoben“ gilt diesem Anteil des Risikos',
    'planning/escalation/minutes': 'Den Fall abzugeben ist so viele Minuten wert',
    'planning/day/minutes': 'Ein Tag mit dem Fehler ist dem Kunden so viele Minuten wert',
    'planning/use/hoursPerDay': 'Stunden am Tag, in denen die Kette genutzt wird',
    'planning/handOver/minutes': 'Minuten Arbeit, um den Fall abzugeben',
    'planning/handOver/days': 'Tage, bis die zweite Ebene antwortet',
    'planning/handOver/sureness': 'Wahrscheinlichkeit, dass ihre Antwort die Ursache nennt',
    'planning/twoFaults/chance': 'Anteil der Tickets mit zwei Fehlern, die wie einer aussehen',
    'planning/oneTry/minutes': 'Minuten für einen Versuch eines Auslösers',
  },
  parts: {
    any: 'jede Ursache, die nicht daneben steht',
    other: 'jede andere Ursache',
    'contentChances/any': 'jeder Inhalt',
    each: 'eine Kette',
    highRateOnly: 'nur hohe Rate oder Auflösung',
    protectedOnly: 'nur geschützter Inhalt',
    always: 'immer da',
    trigger: 'auf einen Auslöser',
    random: 'zufällig',
    bursts: 'in Schüben',
    warm: 'erst wenn es warm ist',
    neverWorked: 'es ging nie',
    workedBefore: 'es ging schon',
    target: 'am Teil selbst',
    ends: 'an dem, worin es steckt',
    between: 'zwischen den beiden Quellen und wo sich ihre Wege treffen',
    upstream: 'davor',
    downstream: 'dahinter',
    anywhere: 'irgendwo auf dem Weg',
    whole: 'an der Kette als Ganzem',
    stays: 'der Fehler bleibt weg',
    apart: 'anderswo',
    own: 'im Gerät selbst',
    upstreamSurvives: 'davor, und sein Menü bleibt bekanntlich',
    notKnown: 'Menüs, die verschwinden, was auch schuld ist',
    misread: 'ein Auftreten wird falsch abgelesen',
    receives: 'in dem, was es empfängt',
    sends: 'in dem, was es sendet',
    outside: 'nicht im Modell',
    shared: 'auf dem Weg, den beide teilen',
    setup: 'sie zu machen',
    restore: 'sie zurückzunehmen',
    pullThroughConduit: 'Ein Kabel durch ein Leerrohr ziehen',
    riskMin: 'Was ein Missgeschick im Schnitt kostet',
    edidReadFailed: 'Ein EDID war nicht zu lesen',
    edidDiffers: 'Ein EDID ist anders als zuvor',
    authenticationFailed: 'Die Authentifizierung schlug fehl',
    linkFellBack: 'Eine Verbindung fiel auf eine niedrigere Rate zurück',
    hotPlugDropped: 'Hot Plug fiel weg',
    syncLost: 'Sync ging verloren',
    restarted: 'Ein Gerät startete neu',
    formatChanged: 'Das Format wechselte',
    portSetLow: 'Ein Anschluss stand in einer zu niedrigen Betriebsart',
    portSetRight: 'Ein Anschluss stand in der richtigen Betriebsart',
    settingWrong: 'Eine Einstellung war falsch',
  },
};

/** By language; of no browser, so that tests can read them. */
export const figureWords: Readonly<Record<LanguageTag, FigureWords>> = { en, de };

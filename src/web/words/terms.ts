import type { DeviceRole } from '../../../shared/contract/chain.ts';
import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { EvidenceKind } from '../../../shared/contract/evidence.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import type { Site } from '../../../shared/contract/site.ts';
import type { TicketSummary } from '../../../shared/contract/ticket.ts';
import type { CompletenessItem, WhatChanged, WorkingState } from '../../../shared/contract/triage.ts';
import { wordsOf } from './language.ts';

type Terms = {
  roles: Record<MemberRole, string>;
  states: Record<WorkingState | 'escalated' | 'closed', string>;
  symptoms: Record<TicketSummary['symptom'], string>;
  priorities: Record<TicketSummary['priority'], string>;
  hazards: Record<Site['hazards'][number]['kind'], string>;
  devices: Record<DeviceRole, string>;
  items: Record<CompletenessItem, string>;
  evidence: Record<EvidenceKind, string>;
  changed: Record<WhatChanged['kind'], string>;
  commands: Record<TicketCommandType, string>;
  /** What is on a ticket's log beside its commands. */
  facts: Record<'open' | 'assign' | 'takeOver' | 'update' | 'evidenceAdded' | 'evidenceWithdrawn', string>;
};

/** What the contract's own values are called on screens. A value that gets no name here is a type error. */
const en: Terms = {
  roles: { dispatcher: 'Dispatcher', technician: 'Technician', support: 'Second line', admin: 'Admin' },
  states: {
    baseline: 'Baseline',
    reproduce: 'Reproduce',
    locateSide: 'Locate the side',
    'substitute.ready': 'Substitute',
    'substitute.declared': 'Change declared',
    'substitute.applied': 'Change in place',
    'substitute.judged': 'Change judged',
    culpritFound: 'Culprit found',
    remedy: 'Remedy',
    verify: 'Verify',
    escalated: 'With second line',
    closed: 'Closed',
  },
  symptoms: {
    noPicture: 'No picture',
    dropOuts: 'Drop-outs',
    sparkles: 'Sparkles',
    noHdrOrWrongColour: 'No HDR, or wrong colour',
    wrongRateOrResolution: 'Wrong rate or resolution',
    contentProtectionMessage: 'Content-protection message',
    soundOnly: 'Sound only',
  },
  priorities: { low: 'Low', normal: 'Normal', high: 'High', urgent: 'Urgent' },
  hazards: {
    ladder: 'Ladder',
    laser: 'Laser light',
    mains: 'Mains voltage',
    cableAcrossFloor: 'Cable across the floor',
    cableInWall: 'Cable in a wall',
    other: 'Other hazard',
  },
  devices: {
    source: 'Source',
    switch: 'Switch',
    receiver: 'Receiver',
    processor: 'Processor',
    extender: 'Extender',
    splitter: 'Splitter',
    display: 'Display',
  },
  items: {
    audit: 'Prerequisite audit',
    whatChanged: 'What changed before',
    reproduction: 'Reproduction',
    side: 'Side proof',
    substitution: 'Substitution',
    firmware: 'Firmware levels',
    settings: 'Settings',
    linkPhotos: 'Photos of cables',
    edid: 'EDID readings',
    logs: 'Logs',
  },
  evidence: {
    photo: 'Photo',
    log: 'Log',
    edid: 'EDID',
    settings: 'Settings',
    firmware: 'Firmware',
    note: 'Note',
    document: 'Document',
  },
  changed: {
    cable: 'A cable',
    device: 'A device',
    firmware: 'Firmware',
    setting: 'A setting',
    move: 'Something was moved',
    buildingWork: 'Building work',
    other: 'Something else',
    nothing: 'Nothing',
    notKnown: 'Not known',
  },
  commands: {
    note: 'Write a note',
    amendIntake: 'Correct the symptom',
    reviewAudit: 'Review the audit',
    answerWhatChanged: 'Answer what changed',
    recordAsFound: 'Record the chain as found',
    startWatch: 'Start a watch',
    recordOccurrence: 'Record that it happened',
    recordTry: 'Record a try',
    confirmOccurrence: 'Confirm an occurrence from a log',
    withdrawOccurrence: 'Withdraw an occurrence',
    endWatch: 'End the watch',
    acceptReproduction: 'Accept the reproduction',
    concludeSide: 'Conclude the side',
    withdrawSide: 'Withdraw the side',
    beginSubstitution: 'Begin substituting',
    declareChange: 'Declare one change',
    withdrawChange: 'Withdraw the change',
    applyChange: 'Put the change in place',
    judgeRetest: 'Judge the retest',
    restoreChange: 'Put it back',
    keepChange: 'Keep the change',
    locateSideAgain: 'Locate the side again',
    nameCulprit: 'Name the culprit',
    withdrawCulprit: 'Withdraw the culprit',
    chooseRemedy: 'Choose the remedy',
    withdrawRemedy: 'Withdraw the remedy',
    finishRemedy: 'Finish the remedy',
    faultCameBack: 'The fault came back',
    close: 'Close the ticket',
    reopen: 'Reopen the ticket',
    escalate: 'Escalate to second line',
    answerRequest: 'Answer second line',
    resubmit: 'Send it to second line again',
    recall: 'Call it back from second line',
    takeCase: 'Take the case',
    askForMore: 'Ask for more',
    directStep: 'Direct a step',
    acceptCase: 'Accept the case',
    handBack: 'Hand the case back',
  },
  facts: {
    open: 'Open the ticket',
    assign: 'Assign the ticket',
    takeOver: 'Take the ticket over',
    update: 'Change priority, visit or intake',
    evidenceAdded: 'Add evidence',
    evidenceWithdrawn: 'Withdraw evidence',
  },
};
const de: Terms = {
  roles: { dispatcher: 'Disposition', technician: 'Technik', support: 'Zweite Ebene', admin: 'Verwaltung' },
  states: {
    baseline: 'Ausgangslage',
    reproduce: 'Nachstellen',
    locateSide: 'Seite finden',
    'substitute.ready': 'Tauschen',
    'substitute.declared': 'Änderung angesagt',
    'substitute.applied': 'Änderung eingebaut',
    'substitute.judged': 'Änderung bewertet',
    culpritFound: 'Ursache gefunden',
    remedy: 'Abhilfe',
    verify: 'Nachprüfen',
    escalated: 'Bei der zweiten Ebene',
    closed: 'Abgeschlossen',
  },
  symptoms: {
    noPicture: 'Kein Bild',
    dropOuts: 'Aussetzer',
    sparkles: 'Glitzern',
    noHdrOrWrongColour: 'Kein HDR oder falsche Farben',
    wrongRateOrResolution: 'Falsche Bildrate oder Auflösung',
    contentProtectionMessage: 'Meldung zum Kopierschutz',
    soundOnly: 'Nur Ton',
  },
  priorities: { low: 'Niedrig', normal: 'Normal', high: 'Hoch', urgent: 'Dringend' },
  hazards: {
    ladder: 'Leiter',
    laser: 'Laserlicht',
    mains: 'Netzspannung',
    cableAcrossFloor: 'Kabel über dem Boden',
    cableInWall: 'Kabel in der Wand',
    other: 'Andere Gefahr',
  },
  devices: {
    source: 'Quelle',
    switch: 'Umschalter',
    receiver: 'Receiver',
    processor: 'Prozessor',
    extender: 'Verlängerung',
    splitter: 'Verteiler',
    display: 'Anzeige',
  },
  items: {
    audit: 'Prüfung der Voraussetzungen',
    whatChanged: 'Was sich vorher änderte',
    reproduction: 'Nachstellung',
    side: 'Nachweis der Seite',
    substitution: 'Tausch',
    firmware: 'Firmware-Stände',
    settings: 'Einstellungen',
    linkPhotos: 'Fotos der Kabel',
    edid: 'EDID-Lesungen',
    logs: 'Protokolle',
  },
  evidence: {
    photo: 'Foto',
    log: 'Protokoll',
    edid: 'EDID',
    settings: 'Einstellungen',
    firmware: 'Firmware',
    note: 'Notiz',
    document: 'Dokument',
  },
  changed: {
    cable: 'Ein Kabel',
    device: 'Ein Gerät',
    firmware: 'Firmware',
    setting: 'Eine Einstellung',
    move: 'Etwas wurde umgestellt',
    buildingWork: 'Bauarbeiten',
    other: 'Etwas anderes',
    nothing: 'Nichts',
    notKnown: 'Nicht bekannt',
  },
  commands: {
    note: 'Notiz schreiben',
    amendIntake: 'Symptom berichtigen',
    reviewAudit: 'Prüfung durchsehen',
    answerWhatChanged: 'Sagen, was sich änderte',
    recordAsFound: 'Kette festhalten wie vorgefunden',
    startWatch: 'Beobachtung beginnen',
    recordOccurrence: 'Festhalten, dass es geschah',
    recordTry: 'Versuch festhalten',
    confirmOccurrence: 'Vorkommen aus einem Protokoll bestätigen',
    withdrawOccurrence: 'Vorkommen zurücknehmen',
    endWatch: 'Beobachtung beenden',
    acceptReproduction: 'Nachstellung annehmen',
    concludeSide: 'Seite festlegen',
    withdrawSide: 'Seite zurücknehmen',
    beginSubstitution: 'Mit dem Tauschen beginnen',
    declareChange: 'Eine Änderung ansagen',
    withdrawChange: 'Änderung zurücknehmen',
    applyChange: 'Änderung einbauen',
    judgeRetest: 'Nachtest bewerten',
    restoreChange: 'Zurückbauen',
    keepChange: 'Änderung behalten',
    locateSideAgain: 'Seite noch einmal finden',
    nameCulprit: 'Ursache benennen',
    withdrawCulprit: 'Ursache zurücknehmen',
    chooseRemedy: 'Abhilfe wählen',
    withdrawRemedy: 'Abhilfe zurücknehmen',
    finishRemedy: 'Abhilfe abschließen',
    faultCameBack: 'Der Fehler kam wieder',
    close: 'Ticket abschließen',
    reopen: 'Ticket wieder öffnen',
    escalate: 'An die zweite Ebene geben',
    answerRequest: 'Der zweiten Ebene antworten',
    resubmit: 'Noch einmal an die zweite Ebene geben',
    recall: 'Von der zweiten Ebene zurückholen',
    takeCase: 'Fall übernehmen',
    askForMore: 'Mehr anfordern',
    directStep: 'Schritt anweisen',
    acceptCase: 'Fall annehmen',
    handBack: 'Fall zurückgeben',
  },
  facts: {
    open: 'Ticket öffnen',
    assign: 'Ticket zuweisen',
    takeOver: 'Ticket übernehmen',
    update: 'Vorrang, Termin oder Aufnahme ändern',
    evidenceAdded: 'Beleg hinzufügen',
    evidenceWithdrawn: 'Beleg zurückziehen',
  },
};
export const terms = wordsOf({ en, de });
/** For what puts English texts into German, whatever language the screens are in. */
export const germanTerms = de;

/** The name of a state, also of one that this version does not know. */
export const stateWord = (state: string): string =>
  (terms().states as Record<string, string>)[state] ?? state;
/** What a command, or another event of the log, does, as a button says it. */
export const commandWord = ({ type, label }: { type: string; label: string }): string =>
  (({ ...terms().facts, ...terms().commands }) as Record<string, string>)[type] ?? label;

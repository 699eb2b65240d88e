import type { Device, Finding, Link, Port } from '../../../../shared/contract/chain.ts';
import type { CameBackAnswer, LastedAnswer } from '../../../../shared/contract/diary-names.ts';
import type { LanguageTag } from '../../../../shared/contract/language-names.ts';
import type { CaseEvidence, CaseFile } from '../../../../shared/contract/packet.ts';
import type { TimelineEntry } from '../../../../shared/contract/ticket.ts';
import type {
  ChangeRecord,
  Escalation,
  Judgement,
  Occurrence,
  Watch,
} from '../../../../shared/contract/triage.ts';

type Superseded = ChangeRecord['earlierJudgements'][number]['superseded']['because'];
type InLog = CaseFile['logs'][number]['coverage']['occurrences'][number]['status'];

/** What a summary calls the contract's own values, where a label of shared/message does not fit. */
export type ValueWords = {
  readonly statuses: Record<ChangeRecord['status'], string>;
  readonly verdicts: Record<Judgement['verdict'], string>;
  readonly superseded: Record<Superseded, string>;
  readonly purposes: Record<Watch['purpose'], string>;
  readonly lasted: Record<LastedAnswer, string>;
  readonly cameBack: Record<CameBackAnswer, string>;
  readonly menus: Record<NonNullable<Occurrence['menu']>, string>;
  /** Where the fault lies, before the device whose menu it is. */
  readonly severities: Record<Finding['severity'], string>;
  readonly directions: Record<Port['direction'], string>;
  readonly edidHandlings: Record<Device['edidHandling']['kind'], string>;
  readonly laid: Record<Link['direction'], string>;
  readonly routes: Record<Link['route'], string>;
  readonly seated: Record<Link['sourceEnd']['seated'], string>;
  readonly powered: Record<Link['sourceEnd']['powered'], string>;
  readonly shown: Record<NonNullable<CaseEvidence['tie']['shows']>, string>;
  readonly outcomes: Record<NonNullable<Escalation['outcome']>['kind'], string>;
  readonly inLog: Record<InLog, string>;
  readonly timelineKinds: Record<TimelineEntry['kind'], string>;
};

const en: ValueWords = {
  statuses: {
    declared: 'declared, not yet made',
    applied: 'in place, not yet judged',
    judged: 'in place, judged',
    restored: 'put back',
    kept: 'kept',
    withdrawn: 'withdrawn before it was made',
  },
  verdicts: {
    cleared: 'the fault is gone with it',
    persists: 'the fault is still there with it',
    inconclusive: 'the retest does not settle it',
  },
  superseded: {
    watchedOn: 'more was watched since',
    judgedAgain: 'it was judged again',
    correction: 'what it rested on was corrected',
  },
  purposes: {
    reproduce: 'Reproducing the fault',
    side: 'Finding the side',
    retest: 'Retest',
    confirm: 'Confirming the culprit',
    verify: 'Verifying the remedy',
  },
  lasted: {
    aMoment: 'a moment',
    someSeconds: 'some seconds',
    aMinute: 'about a minute',
    longer: 'longer',
  },
  cameBack: { byItself: 'by itself', notByItself: 'not by itself' },
  menus: { stayed: 'stayed', vanished: 'vanished' },
  severities: { mustFix: 'must be put right', shouldFix: 'should be put right', note: 'note' },
  directions: { input: 'input', output: 'output' },
  edidHandlings: {
    passesOn: '',
    limits: 'limits the EDID it passes on',
    replaces: 'answers with an EDID of its own',
  },
  laid: {
    notDirectional: 'not directional',
    asMarked: 'the right way round',
    reversed: 'the wrong way round',
    unknown: 'direction not known',
  },
  routes: { free: 'lying free', inWall: 'in the wall', inConduit: 'in conduit' },
  seated: { yes: '', no: 'not fully seated', unknown: 'seating not checked' },
  powered: { yes: '', no: 'not powered', unknown: 'power not checked' },
  shown: {
    sourceEnd: 'source end',
    sinkEnd: 'display end',
    label: 'printed label',
    port: 'port',
    screen: 'screen',
    signature: 'client’s signature',
    other: '',
  },
  outcomes: {
    accepted: 'accepted',
    handedBack: 'handed back',
    stepDirected: 'a step was directed',
    resubmitted: 'sent again',
    recalled: 'taken back',
  },
  inLog: {
    covered: 'nothing at that moment',
    inGap: 'nothing: the log is silent there',
    outside: 'nothing: the log does not reach there',
    noTimes: 'nothing: the log has no times',
  },
  timelineKinds: { event: 'event', chain: 'chain', packet: 'packet', log: 'log' },
};

const de: ValueWords = {
  statuses: {
    declared: 'angesagt, noch nicht gemacht',
    applied: 'eingebaut, noch nicht bewertet',
    judged: 'eingebaut, bewertet',
    restored: 'zurückgebaut',
    kept: 'behalten',
    withdrawn: 'zurückgenommen, bevor sie gemacht wurde',
  },
  verdicts: {
    cleared: 'der Fehler ist damit weg',
    persists: 'der Fehler ist damit noch da',
    inconclusive: 'der Nachtest klärt es nicht',
  },
  superseded: {
    watchedOn: 'seither wurde weiter beobachtet',
    judgedAgain: 'es wurde neu bewertet',
    correction: 'worauf es beruhte, wurde berichtigt',
  },
  purposes: {
    reproduce: 'Fehler nachstellen',
    side: 'Seite finden',
    retest: 'Nachtest',
    confirm: 'Ursache bestätigen',
    verify: 'Abhilfe nachprüfen',
  },
  lasted: {
    aMoment: 'einen Augenblick',
    someSeconds: 'einige Sekunden',
    aMinute: 'etwa eine Minute',
    longer: 'länger',
  },
  cameBack: { byItself: 'von selbst', notByItself: 'nicht von selbst' },
  menus: { stayed: 'blieb', vanished: 'ging mit' },
  severities: { mustFix: 'muss behoben werden', shouldFix: 'sollte behoben werden', note: 'Hinweis' },
  directions: { input: 'Eingang', output: 'Ausgang' },
  edidHandlings: {
    passesOn: '',
    limits: 'schränkt das EDID ein, das es weitergibt',
    replaces: 'antwortet mit einem eigenen EDID',
  },
  laid: {
    notDirectional: 'ohne Richtung',
    asMarked: 'richtig herum',
    reversed: 'falsch herum',
    unknown: 'Richtung nicht bekannt',
  },
  routes: { free: 'liegt offen', inWall: 'in der Wand', inConduit: 'im Leerrohr' },
  seated: { yes: '', no: 'steckt nicht ganz', unknown: 'Sitz nicht geprüft' },
  powered: { yes: '', no: 'ohne Strom', unknown: 'Strom nicht geprüft' },
  shown: {
    sourceEnd: 'Ende an der Quelle',
    sinkEnd: 'Ende an der Anzeige',
    label: 'Aufdruck',
    port: 'Buchse',
    screen: 'Bildschirm',
    signature: 'Unterschrift des Kunden',
    other: '',
  },
  outcomes: {
    accepted: 'angenommen',
    handedBack: 'zurückgegeben',
    stepDirected: 'ein Schritt wurde angewiesen',
    resubmitted: 'noch einmal gegeben',
    recalled: 'zurückgeholt',
  },
  inLog: {
    covered: 'nichts in diesem Moment',
    inGap: 'nichts: das Protokoll schweigt dort',
    outside: 'nichts: das Protokoll reicht nicht dorthin',
    noTimes: 'nichts: das Protokoll hat keine Zeiten',
  },
  timelineKinds: { event: 'Ereignis', chain: 'Kette', packet: 'Paket', log: 'Protokoll' },
};

const both: Record<LanguageTag, ValueWords> = { en, de };
export const valueWordsOf = ({ language }: { readonly language: LanguageTag }): ValueWords => both[language];

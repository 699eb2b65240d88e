import type { Finding, Place } from '../../../shared/contract/chain.ts';
import type { ChangeRecord, Verdict } from '../../../shared/contract/change.ts';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import type { BudgetReply } from '../../../shared/contract/signal.ts';
import type { Intake } from '../../../shared/contract/ticket.ts';
import type { Escalation, Side, Watch } from '../../../shared/contract/triage.ts';
import { wordsOf } from '../words/language.ts';

type LinkVerdict = BudgetReply['budget']['wanted'][number]['verdict'];

/** What second line's screens call the contract's own values. One that gets no name here is a type error. */
type ValueWords = {
  statuses: Record<ChangeRecord['status'], string>;
  verdicts: Record<Verdict, string>;
  /** Why a judgement does not count any more. */
  superseded: Record<ChangeRecord['earlierJudgements'][number]['superseded']['because'], string>;
  purposes: Record<Watch['purpose'], string>;
  sides: Record<Side, string>;
  contents: Record<Intake['content'], string>;
  severities: Record<Finding['severity'], string>;
  shows: Record<NonNullable<EvidenceItem['tie']['shows']>, string>;
  outcomes: Record<NonNullable<Escalation['outcome']>['kind'], string>;
  fits: Record<LinkVerdict, string>;
  placeKinds: Record<Place['kind'], string>;
};

const en: ValueWords = {
  statuses: {
    declared: 'declared, not made yet',
    applied: 'in place, not judged yet',
    judged: 'in place, judged',
    restored: 'put back',
    kept: 'kept',
    withdrawn: 'withdrawn, never made',
  },
  verdicts: { cleared: 'Fault stayed away', persists: 'Fault still there', inconclusive: 'Settles nothing' },
  superseded: {
    watchedOn: 'more was watched since',
    judgedAgain: 'it was judged again',
    correction: 'what it rested on was corrected',
  },
  purposes: {
    reproduce: 'to reproduce',
    side: 'for the side',
    retest: 'retest',
    confirm: 'put back',
    verify: 'to verify',
  },
  sides: { input: 'upstream of it', output: 'downstream of it' },
  contents: {
    any: 'with any content',
    highRateOnly: 'only at high rates',
    protectedOnly: 'only with protected content',
    notKnown: 'not known',
  },
  severities: { mustFix: 'must be fixed', shouldFix: 'should be fixed', note: 'note' },
  shows: {
    sourceEnd: 'source end',
    sinkEnd: 'sink end',
    label: 'label',
    port: 'port',
    screen: 'screen',
    signature: 'client’s signature',
    other: 'other',
  },
  outcomes: {
    accepted: 'Accepted',
    handedBack: 'Handed back',
    stepDirected: 'Step directed',
    resubmitted: 'Sent again',
    recalled: 'Called back',
  },
  fits: {
    fits: 'fits',
    doubtful: 'doubtful',
    reduced: 'not all of it',
    notOffered: 'not offered',
    short: 'too little',
  },
  placeKinds: { chain: 'Whole chain', device: 'Device', port: 'Port', link: 'Cable' },
};
const de: ValueWords = {
  statuses: {
    declared: 'angesagt, noch nicht gemacht',
    applied: 'eingebaut, noch nicht bewertet',
    judged: 'eingebaut, bewertet',
    restored: 'zurückgebaut',
    kept: 'behalten',
    withdrawn: 'zurückgenommen, nie gemacht',
  },
  verdicts: { cleared: 'Fehler blieb weg', persists: 'Fehler noch da', inconclusive: 'Klärt nichts' },
  superseded: {
    watchedOn: 'seither wurde weiter beobachtet',
    judgedAgain: 'es wurde neu bewertet',
    correction: 'worauf es beruhte, wurde berichtigt',
  },
  purposes: {
    reproduce: 'zum Nachstellen',
    side: 'für die Seite',
    retest: 'Nachtest',
    confirm: 'zurückgebaut',
    verify: 'zum Nachprüfen',
  },
  sides: { input: 'davor', output: 'dahinter' },
  contents: {
    any: 'bei jedem Inhalt',
    highRateOnly: 'nur bei hohen Raten',
    protectedOnly: 'nur bei geschütztem Inhalt',
    notKnown: 'nicht bekannt',
  },
  severities: { mustFix: 'muss behoben werden', shouldFix: 'sollte behoben werden', note: 'Hinweis' },
  shows: {
    sourceEnd: 'Quellenende',
    sinkEnd: 'Senkenende',
    label: 'Aufdruck',
    port: 'Anschluss',
    screen: 'Bildschirm',
    signature: 'Unterschrift des Kunden',
    other: 'anderes',
  },
  outcomes: {
    accepted: 'Angenommen',
    handedBack: 'Zurückgegeben',
    stepDirected: 'Schritt angewiesen',
    resubmitted: 'Noch einmal gegeben',
    recalled: 'Zurückgeholt',
  },
  fits: {
    fits: 'passt',
    doubtful: 'zweifelhaft',
    reduced: 'nicht alles',
    notOffered: 'nicht angeboten',
    short: 'zu wenig',
  },
  placeKinds: { chain: 'Ganze Kette', device: 'Gerät', port: 'Anschluss', link: 'Kabel' },
};
export const values = wordsOf({ en, de });

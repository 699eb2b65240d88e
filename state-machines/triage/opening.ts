import type { Symptom, TriageRecord, TriageSettings, WhatChanged } from '../../shared/contract/triage.ts';

/** What a ticket is opened with. `at` is UTC, ISO 8601. */
export type Opening = {
  ticketId: string;
  settings: TriageSettings;
  symptom: Symptom;
  /** As the client answered during the call; empty when it was not asked. */
  whatChanged: WhatChanged[];
  at: string;
  by: string;
};

/** The record of a ticket that was just opened. */
export function openingRecord({ ticketId, settings, symptom, whatChanged, at, by }: Opening): TriageRecord {
  return {
    ticketId,
    openedAt: at,
    openedBy: by,
    settings,
    symptom,
    round: 1,
    resumeAt: null,
    audit: null,
    whatChanged: whatChanged.length > 0 ? { answers: whatChanged, at, by } : null,
    asFound: null,
    asLeft: null,
    watches: [],
    reproductionAccepted: false,
    cameBackWatchIds: [],
    sides: [],
    withoutSide: null,
    looks: [],
    changes: [],
    culprit: null,
    remedy: null,
    quietProof: null,
    evidence: [],
    escalations: [],
    requests: [],
    diaries: [],
    reports: [],
    unattended: [],
    notes: [],
    waits: [],
    choices: [],
    leavingCheck: null,
    followUp: null,
    closedAt: null,
    closing: null,
    setAside: [],
    reopenings: [],
  };
}

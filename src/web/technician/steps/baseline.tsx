import { useState } from 'preact/hooks';
import { placeKey } from '../../../../shared/chain/place.ts';
import type { Finding } from '../../../../shared/contract/chain.ts';
import { findingSeverities } from '../../../../shared/contract/chain-names.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import type { WhatChanged } from '../../../../shared/contract/triage.ts';
import { whatChangedKinds } from '../../../../shared/contract/triage-names.ts';
import { distinctMessages, type Message, messageKey } from '../../../../shared/message/index.ts';
import { ChainDrawing } from '../../drawing/chain-drawing.tsx';
import { Button } from '../../parts/button.tsx';
import { Field, TextField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { Sentence } from '../../words/sentence.tsx';
import { terms } from '../../words/terms.ts';
import { placeWords } from '../common/place-words.ts';
import { Cautions, Question, WorkingQuestion } from './question.tsx';
import type { PlanHere } from './use-plan.ts';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** What has to be known before the fault is looked for, one thing after the other. */
export function BaselineQuestion({ work, planned }: { work: Work; planned: PlanHere }) {
  const { audit, whatChanged } = work.ticket.triage;
  if (audit === null) return <AuditQuestion key="audit" work={work} planned={planned} />;
  if (whatChanged === null) return <WhatChangedQuestion key="whatChanged" work={work} />;
  return <AsFoundQuestion key="asFound" work={work} />;
}

function AuditQuestion({ work, planned }: { work: Work; planned: PlanHere }) {
  const t = triageWords();
  if (planned.isMaking && planned.findings === null) return <WorkingQuestion work={work} />;
  const found = planned.findings ?? work.known.audit?.findings ?? null;
  const findings = found ?? [];
  return (
    <Question
      work={work}
      title={t.auditTitle}
      answers={
        <Button
          kind="primary"
          large
          onClick={() => void work.send({ type: 'reviewAudit', chainVersion: work.chainVersion, note: '' })}
        >
          {t.auditDone}
        </Button>
      }
    >
      <p>{found === null ? t.auditNotMade : found.length === 0 ? t.auditNone : t.auditLead}</p>
      {findingSeverities.map((severity) => (
        <Findings key={severity} severity={severity} findings={findings} work={work} />
      ))}
      <Cautions texts={careFor(findings)} />
    </Question>
  );
}

function Findings({
  severity,
  findings,
  work,
}: {
  severity: Finding['severity'];
  findings: readonly Finding[];
  work: Work;
}) {
  const t = triageWords();
  const these = findings.filter((finding) => finding.severity === severity);
  if (these.length === 0) return null;
  const places = new Map(these.map((finding) => [placeKey(finding.place), finding.place]));
  return (
    <details open={severity === 'mustFix'} class="findings">
      <summary>
        <h2>
          {t.severity[severity]} ({these.length})
        </h2>
      </summary>
      <ul class="list">
        {[...places].map(([key, place]) => (
          <li key={key} class={`finding finding-${severity}`}>
            <strong>{placeWords(work.chain, place)}</strong>
            {these
              .filter((finding) => placeKey(finding.place) === key)
              .map((finding) => (
                <p key={messageKey(finding.text)}>
                  <Sentence>{finding.text}</Sentence>{' '}
                  <span class="soft">
                    → <Sentence>{finding.whatToDo}</Sentence>
                  </span>
                </p>
              ))}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** The care that the findings ask for; many ask for the same, which is said once. */
const careFor = (findings: readonly Finding[]): Message[] =>
  distinctMessages(findings.flatMap(({ cautions }) => cautions));

type Said = { kinds: WhatChanged['kind'][]; text: string };

function WhatChangedQuestion({ work }: { work: Work }) {
  const t = triageWords();
  const [said, say, forget] = useDraftForm<Said>(`what changed ${work.ticket.id}`, { kinds: [], text: '' });
  const [isLacking, setLacking] = useState(false);
  const toggle = (kind: WhatChanged['kind'], isOn: boolean) => {
    const alone = kind === 'nothing' || kind === 'notKnown';
    const others = said.kinds.filter(
      (each) => each !== kind && !alone && each !== 'nothing' && each !== 'notKnown',
    );
    say({ kinds: isOn ? [...others, kind] : others });
  };
  const send = async () => {
    setLacking(said.kinds.length === 0);
    if (said.kinds.length === 0) return;
    const answers = said.kinds.map((kind, at) => ({
      kind,
      text: at === 0 ? said.text.trim() : '',
      when: null,
    }));
    if (await work.send({ type: 'answerWhatChanged', answers })) await forget();
  };
  return (
    <Question
      work={work}
      title={t.changedTitle}
      answers={
        <Button kind="primary" large onClick={() => void send()}>
          {t.changedSend}
        </Button>
      }
    >
      <p>{t.changedLead}</p>
      <fieldset class="choices field">
        <legend class="for-readers-only">{t.changedTitle}</legend>
        {whatChangedKinds.map((kind) => (
          <label class="choice" key={kind}>
            <input
              type="checkbox"
              checked={said.kinds.includes(kind)}
              onChange={({ currentTarget }) => toggle(kind, currentTarget.checked)}
            />
            {terms().whatChanged[kind]}
          </label>
        ))}
      </fieldset>
      {isLacking && said.kinds.length === 0 && (
        <Notice tone="caution" announce>
          {t.changedPick}
        </Notice>
      )}
      <Field
        label={t.changedText}
        optional
        value={said.text}
        maxLength={longest.text}
        onInput={({ currentTarget }) => say({ text: currentTarget.value })}
      />
    </Question>
  );
}

function AsFoundQuestion({ work }: { work: Work }) {
  const t = triageWords();
  const [differs, setDiffers] = useState(false);
  const [written, write, forget] = useDraftForm(`differs ${work.ticket.id}`, { text: '' });
  const note = async () => {
    const text = written.text.trim();
    if (text !== '' && (await work.send({ type: 'note', text }))) {
      await forget();
      setDiffers(false);
    }
  };
  return (
    <Question
      work={work}
      title={t.asFoundTitle}
      answers={
        <>
          <Button
            kind="primary"
            large
            onClick={() => void work.send({ type: 'recordAsFound', chainVersion: work.chainVersion })}
          >
            {t.asFoundSend}
          </Button>
          <Button large onClick={() => setDiffers(!differs)} aria-expanded={differs}>
            {t.asFoundDiffers}
          </Button>
        </>
      }
    >
      <p>{t.asFoundLead}</p>
      <p class="soft">{t.devicesAndCables(work.chain.devices.length, work.chain.links.length)}</p>
      <ChainDrawing chain={work.chain} />
      {differs && (
        <form
          class="stack"
          onSubmit={(event) => {
            event.preventDefault();
            void note();
          }}
        >
          <p>{t.asFoundHow}</p>
          <TextField
            label={t.whatDiffers}
            value={written.text}
            maxLength={longest.text}
            onInput={({ currentTarget }) => write({ text: currentTarget.value })}
          />
          <Button type="submit">{t.writeDown}</Button>
        </form>
      )}
    </Question>
  );
}

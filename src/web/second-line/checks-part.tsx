import { checkLevels } from '../../../shared/chain/firmware-level.ts';
import type { Finding } from '../../../shared/contract/chain.ts';
import { findingSeverities } from '../../../shared/contract/chain-names.ts';
import { messageKey } from '../../../shared/message/index.ts';
import { standingEvidence } from '../../../state-machines/triage/record.ts';
import { paths } from '../api/paths.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { Badge } from '../parts/notice.tsx';
import { placeWord } from '../place/place-words.ts';
import { useDocument } from '../store/documents.ts';
import { inWords, inWordsOf, said } from '../words/sentence.tsx';
import { dayAndTime, number } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { Table } from './table.tsx';
import { values } from './value-words.ts';
import { caseWords } from './words.ts';

const tones = { mustFix: 'refusal', shouldFix: 'caution', note: 'plain' } as const;

/** The audit of the chain as it is described now, worst first. */
export function AuditPart({ facts: { ticket, chain } }: { facts: CaseFacts }) {
  const t = caseWords();
  const audit = useDocument(paths.chainAudit(ticket.chainId, ticket.triage.symptom.kind));
  return (
    <CasePart id="audit" title={t.audit} isFolded digest={<AuditDigest findings={audit.body?.findings} />}>
      <DocumentView document={audit}>
        {({ version, findings }) => (
          <>
            <p class="soft">{t.auditOf(version)}</p>
            {findings.length === 0 ? (
              <p>{t.noFindings}</p>
            ) : (
              <Table
                caption={t.audit}
                heads={[t.severity, t.where, t.finding, t.whatToDo, t.source]}
                rows={findings
                  .toSorted(
                    (a, b) => findingSeverities.indexOf(a.severity) - findingSeverities.indexOf(b.severity),
                  )
                  .map(({ severity, place, text, whatToDo, source, cautions }) => [
                    <Badge key="severity" tone={tones[severity]}>
                      {values().severities[severity]}
                    </Badge>,
                    placeWord(chain, place),
                    inWords(text),
                    inWordsOf([whatToDo, ...cautions]),
                    <span key="source" class="soft">
                      {inWords(source)}
                    </span>,
                  ])}
              />
            )}
          </>
        )}
      </DocumentView>
    </CasePart>
  );
}

/** How many findings there are of each severity that somebody has to act on. */
function AuditDigest({ findings }: { findings: readonly Finding[] | undefined }) {
  if (findings === undefined) return null;
  const counted = (['mustFix', 'shouldFix'] as const)
    .map((severity) => ({ severity, count: findings.filter((one) => one.severity === severity).length }))
    .filter(({ count }) => count > 0);
  if (counted.length === 0) return <Badge tone="good">{caseWords().nothingToSay}</Badge>;
  return counted.map(({ severity, count }) => (
    <Badge key={severity} tone={tones[severity]}>
      {number(count)} {values().severities[severity]}
    </Badge>
  ));
}

export function FindingList({ findings }: { findings: readonly Finding[] }) {
  return (
    <ul>
      {findings.map(({ rule, severity, text }) => (
        <li key={rule + messageKey(text)}>
          <Badge tone={tones[severity]}>{values().severities[severity]}</Badge> {inWords(text)}
        </li>
      ))}
    </ul>
  );
}

/** What was read last of each device's firmware, against the lowest level that the organisation accepts. */
export function FirmwarePart({ facts: { ticket, chain, zone, nameOf } }: { facts: CaseFacts }) {
  const t = caseWords();
  const levels = useDocument(paths.firmwareLevels).body?.items ?? [];
  const readings = standingEvidence(ticket.triage).filter(({ reading }) => reading?.kind === 'firmware');
  const known = chain.devices.map((device) => {
    const read = readings.findLast(({ tie }) => tie.deviceId === device.id);
    const level = read?.reading?.kind === 'firmware' ? read.reading.level : device.firmware;
    return { device, read, level, checks: checkLevels({ model: device.model, firmware: level }, levels) };
  });
  const below = known.filter(({ checks }) => checks.some(({ result }) => result === 'below')).length;
  const unread = known.filter(({ level }) => level === null).length;
  const rows = known.map(({ device, read, level, checks }) => {
    return [
      device.name,
      device.model ?? '',
      level ?? (
        <Badge key="none" tone="caution">
          {t.notKnown}
        </Badge>
      ),
      checks.map(({ minimum }) => minimum).join(', '),
      checks.length === 0
        ? t.noMinimum
        : checks.map(({ result, minimum, reason }) => (
            <Badge key={minimum} tone={result === 'ok' ? 'good' : result === 'below' ? 'refusal' : 'caution'}>
              {result === 'ok'
                ? t.levelOk
                : result === 'below'
                  ? t.levelBelow
                  : `${t.notKnown}: ${said(reason).text}`}
            </Badge>
          )),
      read === undefined
        ? device.firmware === null
          ? ''
          : t.fromDescription
        : t.readBy(nameOf(read.by), dayAndTime(read.at, zone)),
    ];
  });
  return (
    <CasePart
      id="firmware"
      title={t.firmwareLevels}
      isFolded
      digest={
        <>
          {below > 0 && <Badge tone="refusal">{`${number(below)} ${t.levelBelow}`}</Badge>}
          {unread > 0 && <Badge tone="caution">{`${number(unread)} ${t.notKnown}`}</Badge>}
          {below + unread === 0 && <Badge tone="good">{t.levelOk}</Badge>}
        </>
      }
    >
      <Table
        caption={t.firmwareLevels}
        heads={[t.device, t.model, t.level, t.lowest, t.check, t.from]}
        rows={rows}
      />
    </CasePart>
  );
}

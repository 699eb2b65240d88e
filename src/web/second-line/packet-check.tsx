import { useState } from 'preact/hooks';
import { read } from '../api/client.ts';
import { paths } from '../api/paths.ts';
import { Badge, Notice } from '../parts/notice.tsx';
import type { FileCheck, PacketCheck } from './check-packet.ts';
import type { PacketSignature } from './packet-signature.ts';
import { packetWords } from './packet-words.ts';
import { Table } from './table.tsx';

export type Checking =
  | { kind: 'idle' }
  | { kind: 'busy'; done: number; of: number }
  | { kind: 'done'; check: PacketCheck; isFromHere: boolean | null };

/** Checks a packet's hashes in this browser; the unpacking comes in a chunk of its own. */
export function useChecking(): [Checking, (zip: Blob) => Promise<void>] {
  const [state, setState] = useState<Checking>({ kind: 'idle' });
  const check = async (zip: Blob) => {
    setState({ kind: 'busy', done: 0, of: 0 });
    const { checkPacket } = await import('./check-packet.ts');
    const result = await checkPacket(zip, (done, of) => setState({ kind: 'busy', done, of }));
    const here = await read(paths.signingKey);
    const isFromHere =
      result.kind === 'checked' && result.signature.kind === 'valid' && here.kind === 'ok'
        ? here.body.fingerprint === result.signature.fingerprint
        : null;
    setState({ kind: 'done', check: result, isFromHere });
  };
  return [state, check];
}

const tones = { ok: 'good', changed: 'refusal', missing: 'refusal', unlisted: 'caution' } as const;
const worstFirst: readonly FileCheck['status'][] = ['changed', 'missing', 'unlisted', 'ok'];

/** What came of checking, file by file, with what is wrong on top. */
export function CheckResult({ checking }: { checking: Checking }) {
  const t = packetWords();
  if (checking.kind === 'idle') return null;
  if (checking.kind === 'busy')
    return (
      <p role="status">
        {t.checking} {checking.of > 0 && t.progress(checking.done, checking.of)}
      </p>
    );
  const { check } = checking;
  if (check.kind !== 'checked')
    return (
      <Notice tone="refusal" announce>
        {check.kind === 'noZip' ? t.noZip : t.noManifest}
      </Notice>
    );
  const bad = check.files.filter(({ status }) => status !== 'ok').length;
  return (
    <>
      <Notice tone={bad === 0 ? 'good' : 'refusal'} announce>
        <strong>{bad === 0 ? t.allGood(check.files.length) : t.someBad(bad, check.files.length)}</strong>
        <span>{t.whatItMeans}</span>
      </Notice>
      <WhoSigned signature={check.signature} isFromHere={checking.isFromHere} isWhole={bad === 0} />
      <Table
        caption={t.fileByFile}
        heads={[t.file, t.state]}
        rows={check.files
          .toSorted((a, b) => worstFirst.indexOf(a.status) - worstFirst.indexOf(b.status))
          .map(({ path, status }) => [
            <span key="path" class="figures">
              {path}
            </span>,
            <Badge key="state" tone={tones[status]}>
              {t.statuses[status]}
            </Badge>,
          ])}
      />
    </>
  );
}

type Signer = {
  signature: PacketSignature;
  /** Null where this server can't be asked. */
  isFromHere: boolean | null;
  /** Every file is as listed. */
  isWhole: boolean;
};

/** Whose signature a packet carries, as far as that can be told. */
function WhoSigned({ signature, isFromHere, isWhole }: Signer) {
  const t = packetWords();
  if (signature.kind !== 'valid')
    return (
      <Notice tone={signature.kind === 'wrong' ? 'refusal' : 'caution'}>
        {t.signatures[signature.kind]}
      </Notice>
    );
  return (
    <Notice tone={isFromHere === true && isWhole ? 'good' : 'caution'}>
      <span>
        {isFromHere === true ? t.signedHere : isFromHere === false ? t.signedElsewhere : t.signedBySome}
      </span>
      <span class="figures">{signature.fingerprint.match(/.{8}/g)?.join(' ')}</span>
    </Notice>
  );
}

import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { readFile } from '../api/client.ts';
import { Button } from '../parts/button.tsx';
import { Notice } from '../parts/notice.tsx';
import { saveAs } from '../parts/save-as.ts';
import { CheckResult, useChecking } from './packet-check.tsx';
import { packetWords } from './packet-words.ts';

/** Downloads a packet or its summary, and checks it here. */
type PacketFile = typeof addresses.packetDownload | typeof addresses.packetSummary;

export function PacketFiles({ packetId, name }: { packetId: string; name: string }) {
  const t = packetWords();
  const [checking, check] = useChecking();
  const [state, setState] = useState<'idle' | 'loading' | 'failed'>('idle');
  const fetched = async (address: PacketFile, use: (file: Blob) => void | Promise<void>) => {
    setState('loading');
    const file = await readFile(addressOf(address, { id: packetId }));
    setState(file === null ? 'failed' : 'idle');
    if (file !== null) await use(file);
  };
  return (
    <>
      <div class="row not-printed">
        <Button
          disabled={state === 'loading'}
          onClick={() => void fetched(addresses.packetDownload, (zip) => saveAs(zip, `${name}.zip`))}
        >
          {t.download}
        </Button>
        <Button disabled={state === 'loading'} onClick={() => void fetched(addresses.packetDownload, check)}>
          {t.check}
        </Button>
        <Button
          disabled={state === 'loading'}
          onClick={() => void fetched(addresses.packetSummary, (page) => saveAs(page, `${name}.html`))}
        >
          {t.summary}
        </Button>
        {state === 'loading' && <span role="status">{t.loading} …</span>}
      </div>
      {state === 'failed' && (
        <Notice tone="refusal" announce>
          {t.notFetched}
        </Notice>
      )}
      <CheckResult checking={checking} />
    </>
  );
}

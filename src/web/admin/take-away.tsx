import { useState } from 'preact/hooks';
import { readFile } from '../api/client.ts';
import { Button } from '../parts/button.tsx';
import { Notice } from '../parts/notice.tsx';
import { number } from '../words/times.ts';
import { adminWords } from './words.ts';

type State = { kind: 'idle' | 'making' | 'failed' } | { kind: 'done'; megabytes: number };

/** Makes a zip of what the server has, and downloads it. `name`: of the file, before the day. */
export function TakeAway({ address, name, text }: { address: string; name: string; text: string }) {
  const t = adminWords();
  const [state, setState] = useState<State>({ kind: 'idle' });
  const make = async () => {
    setState({ kind: 'making' });
    const blob = await readFile(address);
    if (blob === null) {
      setState({ kind: 'failed' });
      return;
    }
    const link = document.createElement('a');
    link.href = URL.createObjectURL(blob);
    link.download = `${name}-${new Date().toISOString().slice(0, 10)}.zip`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
    setState({ kind: 'done', megabytes: blob.size / 1_000_000 });
  };
  return (
    <div class="stack admin-form">
      <p>{text}</p>
      <p>{t.exportCheck}</p>
      <Notice tone="caution">{t.exportCare}</Notice>
      <div>
        <Button kind="primary" disabled={state.kind === 'making'} onClick={() => void make()}>
          {t.exportNow}
        </Button>
      </div>
      {state.kind === 'making' && <Notice announce>{t.exporting}</Notice>}
      {state.kind === 'failed' && (
        <Notice tone="refusal" announce>
          {t.exportFailed}
        </Notice>
      )}
      {state.kind === 'done' && (
        <Notice tone="good" announce>
          {t.exported(`${number(state.megabytes, 2)} MB`)}
        </Notice>
      )}
    </div>
  );
}

import { useState } from 'preact/hooks';
import { addresses } from '../../../shared/contract/addresses.ts';
import { readFile } from '../api/client.ts';
import { Button } from '../parts/button.tsx';
import { Notice } from '../parts/notice.tsx';
import { number } from '../words/times.ts';
import { SectionScreen } from './section-screen.tsx';
import { adminWords } from './words.ts';

type State = { kind: 'idle' | 'making' | 'failed' } | { kind: 'done'; megabytes: number };

/** Everything that the firm has here, to take away. */
export function ExportScreen() {
  const t = adminWords();
  const [state, setState] = useState<State>({ kind: 'idle' });
  const make = async () => {
    setState({ kind: 'making' });
    const blob = await readFile(addresses.export);
    if (blob === null) {
      setState({ kind: 'failed' });
      return;
    }
    const link = document.createElement('a');
    link.href = URL.createObjectURL(blob);
    link.download = `halfsplit-export-${new Date().toISOString().slice(0, 10)}.zip`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
    setState({ kind: 'done', megabytes: blob.size / 1_000_000 });
  };
  return (
    <SectionScreen title={t.take}>
      <div class="stack admin-form">
        <p>{t.exportText}</p>
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
    </SectionScreen>
  );
}

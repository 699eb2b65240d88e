import type { ComponentType } from 'preact';
import { useState } from 'preact/hooks';
import { Button } from '../parts/button.tsx';
import { wordsOf } from '../words/language.ts';

type Dialog = ComponentType<{ onFound: (code: string) => void; onClose: () => void }>;
const t = wordsOf({ en: { scan: 'Scan a barcode' }, de: { scan: 'Strichcode scannen' } });

/** Reads a barcode with the camera; not there where the browser can't (W3C Shape Detection, BarcodeDetector). */
export function ScanButton({ onFound }: { onFound: (code: string) => void }) {
  const [Open, setOpen] = useState<Dialog | null>(null);
  if (!('BarcodeDetector' in globalThis)) return null;
  return (
    <div>
      <Button
        onClick={() => void import('./scan-dialog.tsx').then((module) => setOpen(() => module.ScanDialog))}
      >
        {t().scan}
      </Button>
      {Open !== null && (
        <Open
          onFound={(code) => {
            setOpen(null);
            onFound(code);
          }}
          onClose={() => setOpen(null)}
        />
      )}
    </div>
  );
}

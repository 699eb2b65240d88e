import { useState } from 'preact/hooks';
import { Button } from '../parts/button.tsx';
import { lazyPart } from '../parts/lazy-part.tsx';
import { edidWords } from './words.ts';

const EdidBench = lazyPart(() => import('./edid-bench.tsx').then((part) => part.EdidBench));

/** A button that opens the bench; nothing of it is loaded before. */
export function OpenEdidBench({ ticketId }: { ticketId: string }) {
  const [isOpen, setOpen] = useState(false);
  if (isOpen) return <EdidBench ticketId={ticketId} />;
  return (
    <div>
      <Button onClick={() => setOpen(true)}>{edidWords().open}</Button>
    </div>
  );
}

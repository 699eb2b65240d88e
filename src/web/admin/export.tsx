import { addresses } from '../../../shared/contract/addresses.ts';
import { SectionScreen } from './section-screen.tsx';
import { TakeAway } from './take-away.tsx';
import { adminWords } from './words.ts';

/** Everything that the firm has here, to take away. */
export function ExportScreen() {
  const t = adminWords();
  return (
    <SectionScreen title={t.take}>
      <TakeAway address={addresses.export} name="halfsplit-export" text={t.exportText} />
    </SectionScreen>
  );
}

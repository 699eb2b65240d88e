import type { PacketSummary } from '../../../shared/contract/packet.ts';
import { wordsOf } from '../words/language.ts';
import { Notice } from './notice.tsx';

const words = wordsOf({
  en: {
    erasedSince:
      'Something in it was erased from the log since. The packet stays as it was handed over, and still holds it.',
  },
  de: {
    erasedSince:
      'Etwas darin wurde seitdem aus dem Protokoll gelöscht. Das Paket bleibt, wie es übergeben wurde, und enthält es noch.',
  },
});

/** Says of a packet that texts in it were erased after it was made. */
export function ErasedSince({ packet: { erasedSince } }: { packet: Pick<PacketSummary, 'erasedSince'> }) {
  return erasedSince === null || erasedSince.length === 0 ? null : <Notice>{words().erasedSince}</Notice>;
}

import type { Link } from '../../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { spoken, wordsOf } from './tongue.ts';
import { valueWordsOf } from './value-words.ts';
import { joined } from './words.ts';

/** All that is known of a cable, in a line. */
export function cableWords(file: CaseFile, link: Link): string {
  const t = wordsOf(file).chain;
  const values = valueWordsOf(file);
  const [source, sink] = [endWords(file, link.sourceEnd), endWords(file, link.sinkEnd)];
  return joined(
    [
      spoken(file, (say) => say.construction(link.construction)),
      `${spoken(file, (say) => say.category(link.category))}, ${link.certified ? t.certified : t.notCertified}`,
      values.laid[link.direction],
      values.routes[link.route],
      source === '' ? '' : t.sourceEnd(source),
      sink === '' ? '' : t.sinkEnd(sink),
      link.installedOn === null ? '' : t.installed(link.installedOn),
      link.notes,
    ],
    '; ',
  );
}

function endWords(file: CaseFile, { seated, needsPower, powered }: Link['sourceEnd']): string {
  const values = valueWordsOf(file);
  return joined([values.seated[seated], needsPower ? values.powered[powered] : ''], ', ');
}

import { type Erasure, withErasuresTold } from '../../../shared/contract/erased-text.ts';
import { moment } from './summary/words.ts';

type NameOf = (memberId: string) => string;

const words = ({ at, by }: Erasure, nameOf: NameOf): string =>
  `[erased ${moment(at)} UTC by ${nameOf(by) || by}]`;

/** A text that says of erased ones in it when and by whom they were. */
export const tellErasures = (text: string, nameOf: NameOf): string =>
  withErasuresTold(text, (erasure) => words(erasure, nameOf));

import { percentage } from '../../../shared/message/figures.ts';
import { language } from './language.ts';

const decimal = (figure: string): string => (language.value === 'de' ? figure.replace('.', ',') : figure);

/** A chance (0..1) as a percentage that never reads as a plain 0 or 100 where it is neither: `< 0.1 %`. */
export const percent = (chance: number): string =>
  percentage(chance, { lessThan: '<', moreThan: '>', decimal });

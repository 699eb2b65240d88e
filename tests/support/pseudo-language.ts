import type { Message } from '../../shared/contract/message.ts';
import { codes } from '../../shared/message/codes/index.ts';
import { deTerms, german } from '../../shared/message/de/index.ts';
import { english, enTerms } from '../../shared/message/en/index.ts';
import type { Language, MessageTerms } from '../../shared/message/index.ts';
import type { Say } from '../../shared/message/say.ts';

// Set up before tests that are to pass without a sentence of ours (`npm run test:pseudo`): in place of each language's
// sentences and terms stand codes in brackets, beside them what people wrote. What passes so compares, matches and
// parses no sentence.

type Sentence = (values: Message['values'], say: Say) => string;
type Brackets = readonly [string, string];

/** What people wrote in a value: told in every language, since they are to find it again. */
function written(value: unknown, type: string, say: Say): string[] {
  if (value === null || value === undefined) return [];
  if (Array.isArray(value)) return value.flatMap((one) => written(one, type.replace('[]', ''), say));
  if (type.startsWith('text')) return [say.text(value as string)];
  if (type.startsWith('name')) return [say.name(value as string)];
  if (type === 'changeKind' && typeof value === 'object') return [(value as { own: string }).own];
  return type.startsWith('message') ? [say.message(value as Message)] : [];
}

function pseudoSentence(code: string, types: Readonly<Record<string, string>>, [open, close]: Brackets) {
  const sentence: Sentence = (values, say) => {
    const theirs = Object.entries(types).flatMap(([name, type]) => written(values[name], type, say));
    return `${open}${[code, ...theirs].join(' ')}${close}`;
  };
  return sentence;
}

function replace({ sentences }: Language, terms: MessageTerms, brackets: Brackets): void {
  const all = sentences as unknown as Record<string, Sentence>;
  for (const [code, types] of Object.entries(codes)) all[code] = pseudoSentence(code, types, brackets);
  for (const [list, labels] of Object.entries(terms) as [string, Record<string, string>][])
    for (const value of Object.keys(labels)) labels[value] = brackets.join(`${list} ${value}`);
}

replace(english, enTerms, ['⟦', '⟧']);
replace(german, deTerms, ['⟪', '⟫']);

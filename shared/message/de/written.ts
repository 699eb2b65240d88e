import type { writtenCodes } from '../codes/written.ts';
import type { Sentences } from '../sentences.ts';

export const writtenDe: Sentences<typeof writtenCodes> = {
  asWritten: ({ sentence }, say) => say.text(sentence),
  erased: ({ at }, say) => `[Text gelöscht ${say.moment(at)}]`,
  erasedBy: ({ at, by }, say) => `[Text gelöscht ${say.moment(at)} von ${say.name(by)}]`,
  unknownMessage: () => 'Eine neuere Version des Programms sagt hier etwas, wofür diese keine Worte hat.',
};

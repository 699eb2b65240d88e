import type { phoneCodes } from '../codes/phone.ts';
import type { Sentences } from '../sentences.ts';

export const phoneEn: Sentences<typeof phoneCodes> = {
  phoneOutOfReach: () => 'The client can’t reach its switch.',
  phonePullsPlugs: () => 'Plugs would be pulled, and nobody there sees which.',
  phoneTakesSight: () => 'It is undone in a menu: should the picture go, the client could not see it.',
  phoneAtMains: () => 'It is work at mains plugs.',
  phoneTakesKit: () => 'It takes things that a client doesn’t have.',
  phoneCantBeUndone: () => 'It can’t be undone.',
  phoneTakesTechnician: () => 'It takes a technician.',
};

import type { ChangeWords } from './change-words.ts';

export const changesToPlaces = {
  otherChange: {
    label: 'A change described in words',
    order: (place) => `Make a change described in words: ${place}`,
    instructions:
      'Describe what you change, and change that alone. Take the care that the place asks for: ladders, laser light, mains, cables across floors and in walls.',
    afterwards: 'Put it back as it was, unless it may stay and the fault is gone.',
  },
  ownKind: {
    label: 'A change that your organisation has added',
    order: (place) => `Make your organisation’s own change: ${place}`,
    instructions:
      'Do it as your organisation has laid down, and change nothing else. Take the care that the place asks for: ladders, laser light, mains, cables across floors and in walls.',
    afterwards: 'Put it back as it was, unless it may stay and the fault is gone.',
  },
} satisfies Record<string, ChangeWords>;

/** Of a kind that the organisation has named itself. */
export const wordsOfOwnKind = (name: string): ChangeWords => ({
  ...changesToPlaces.ownKind,
  label: name,
  order: (place) => `${name}: ${place}`,
});

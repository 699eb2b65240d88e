import type { ChangeWords } from './change-words.ts';

export const changesToPorts = {
  movePort: {
    label: 'Move the plug to another port',
    order: (place) => `Move to another port: ${place}`,
    instructions:
      'Move this plug to a free port of the same device, in the same direction and with the same abilities and settings, and choose that port.',
    afterwards: 'Leave it there if the fault is gone; otherwise move it back.',
  },
  raisePortMode: {
    label: 'Raise the port’s mode',
    order: (place) => `Raise the mode of ${place}`,
    instructions:
      'Set this port to the highest mode it has. Declare the setting, and read the settings out before and after.',
    afterwards: 'The highest mode may stay. If it must go back, set what it was before.',
  },
} satisfies Record<string, ChangeWords>;

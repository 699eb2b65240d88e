import type { Place } from '../../../shared/contract/chain.ts';

export type Selecting = { isSelected: boolean; onSelect: ((place: Place) => void) | undefined };

/** What makes a shape a button: by tap, click, Enter and the space bar. */
export function pressable(label: string, onPress: () => void): Record<string, unknown> {
  return {
    role: 'button',
    // in small letters: Preact writes names of attributes in a drawing as they are, and SVG's are case-sensitive
    tabindex: 0,
    'aria-label': label,
    onClick: onPress,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      onPress();
    },
  };
}

/** A button that chooses a place. Without `onSelect` it is a picture only. */
export function selectable(
  place: Place,
  label: string,
  { isSelected, onSelect }: Selecting,
): Record<string, unknown> {
  if (onSelect === undefined) return { role: 'img', 'aria-label': label };
  return { ...pressable(label, () => onSelect(place)), 'aria-pressed': isSelected };
}

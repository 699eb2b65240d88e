import type { Place } from '../../../shared/contract/chain.ts';

export type Selecting = { isSelected: boolean; onSelect: ((place: Place) => void) | undefined };

/** What makes a shape a button: by tap, click, Enter and the space bar. Without `onSelect` it is a picture only. */
export function selectable(
  place: Place,
  label: string,
  { isSelected, onSelect }: Selecting,
): Record<string, unknown> {
  if (onSelect === undefined) return { role: 'img', 'aria-label': label };
  return {
    role: 'button',
    tabIndex: 0,
    'aria-label': label,
    'aria-pressed': isSelected,
    onClick: () => onSelect(place),
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      onSelect(place);
    },
  };
}

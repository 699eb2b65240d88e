import { effect, signal } from '@preact/signals';

/** `auto` follows the device: light or dark. */
export const looks = ['auto', 'light', 'dark', 'outdoor'] as const;
export type Look = (typeof looks)[number];

const key = 'halfsplit-look';
export const look = signal<Look>(looks.find((one) => one === localStorage.getItem(key)) ?? 'auto');
effect(() => {
  document.documentElement.dataset.look = look.value;
});
export function chooseLook(chosen: Look): void {
  localStorage.setItem(key, chosen);
  look.value = chosen;
}

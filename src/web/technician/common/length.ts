/** A length as people type it; null for what is none. */
export function lengthFrom(text: string): number | null {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(value) && value > 0 && value <= 1000 ? value : null;
}

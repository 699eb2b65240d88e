/** A kind of event as a person reads it: `hotPlugDown` is “hot plug down”. */
export function kindWords(kind: string): string {
  return kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replace(/^edid\b/, 'EDID');
}

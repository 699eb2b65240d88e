/** What a reader of a page sees: no markup, no style, runs of space as one. */
export const textOf = (markup: string): string =>
  markup
    .replace(/<style>.*?<\/style>/s, '')
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/g, ' ');

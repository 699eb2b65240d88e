/** What follows `--name=` among the words that the benches were started with; undefined where nobody said it. */
export const argument = (name: string): string | undefined =>
  process.argv.find((word) => word.startsWith(`--${name}=`))?.slice(name.length + 3);

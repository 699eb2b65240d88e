/** The look of a page that the server writes, a case summary before all: one column, calm, legible on a phone, on paper and in the dark. */
export const style = `
:root {
  color-scheme: light dark;
  --paper: #fdfdfb; --ink: #1c2024; --quiet: #5a626b; --line: #cfd3d6; --tint: #f1f2ee;
  --accent: #1f5f5b; --warn: #8a3b12; --warn-tint: #fbf0e6;
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #16191b; --ink: #e4e6e4; --quiet: #a3abb1; --line: #3b4146; --tint: #1f2326;
    --accent: #7fc4bd; --warn: #f0b184; --warn-tint: #2c211a;
  }
}
* { box-sizing: border-box; }
body {
  margin: 0 auto; padding: 1.5rem 1rem 3rem; max-width: 52rem;
  background: var(--paper); color: var(--ink);
  font: 16px/1.5 system-ui, sans-serif; overflow-wrap: anywhere;
}
h1 { font-size: 1.6rem; line-height: 1.2; margin: 0 0 .25rem; }
h2 { font-size: 1.15rem; margin: 2.2rem 0 .6rem; padding-top: .6rem; border-top: 1px solid var(--line); }
h3 { font-size: 1rem; margin: 1.2rem 0 .3rem; }
p, ul, ol, table, figure { margin: .4rem 0 .8rem; }
ul, ol { padding-left: 1.3rem; }
.quiet { color: var(--quiet); }
.typed { white-space: pre-wrap; }
.box { border: 1px solid var(--line); border-left: 4px solid var(--accent); background: var(--tint); padding: .7rem .9rem; }
.box.warn { border-left-color: var(--warn); background: var(--warn-tint); }
.box > :first-child { margin-top: 0; } .box > :last-child { margin-bottom: 0; }
dl { display: grid; grid-template-columns: minmax(8rem, 12rem) 1fr; gap: .2rem 1rem; margin: .4rem 0 .8rem; }
dt { color: var(--quiet); } dd { margin: 0; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: .9rem; overflow-wrap: normal; }
th, td { text-align: left; vertical-align: top; padding: .3rem .6rem .3rem 0; border-bottom: 1px solid var(--line); }
th { font-weight: 600; }
.word { font-weight: 600; } .word.warn { color: var(--warn); }
a { color: var(--accent); }
.photos { display: flex; flex-wrap: wrap; gap: .8rem; }
.photos figure { margin: 0; width: 15rem; } .photos img { width: 100%; height: auto; border: 1px solid var(--line); }
figcaption { font-size: .85rem; color: var(--quiet); }
svg { max-width: 100%; height: auto; display: block; }
svg text { font: 12px system-ui, sans-serif; fill: var(--ink); }
svg .name { font-weight: 600; font-size: 13px; } svg .small { fill: var(--quiet); font-size: 11px; }
svg rect { fill: var(--tint); stroke: var(--quiet); } svg path { fill: none; stroke: var(--quiet); stroke-width: 1.5; }
svg .tag { fill: var(--paper); stroke: var(--quiet); }
svg .suspect { stroke: var(--warn); stroke-width: 3; }
@media (max-width: 34rem) {
  dl { grid-template-columns: 1fr; }
  dd { margin: 0 0 .5rem; }
}
@media print {
  :root {
    color-scheme: light;
    --paper: #fff; --ink: #000; --quiet: #444; --line: #bbb; --tint: #fff; --accent: #000; --warn: #000; --warn-tint: #fff;
  }
  @page { margin: 15mm; }
  body { max-width: none; padding: 0; font-size: 10.5pt; }
  h2, h3 { break-after: avoid; }
  tr, figure, .box, svg, .change { break-inside: avoid; }
  .wide { overflow: visible; }
}
`;

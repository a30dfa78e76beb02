/** The style sheet of the report's page. One accent; figures in columns; on paper black on white without tricks. */
export const REPORT_CSS = `
:root { color-scheme: light dark; --ground: #f4f1ea; --page: #fffdf9; --ink: #1f2428; --quiet: #5d6468; --line: #ddd6c6; --accent: #a63426; }
@media (prefers-color-scheme: dark) { :root { --ground: #16191b; --page: #1e2225; --ink: #ece7dc; --quiet: #a5aaa9; --line: #3a4044; --accent: #e0806c; } }
* { box-sizing: border-box; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 16px/1.5 "Helvetica Neue", Helvetica, Arial, "Liberation Sans", sans-serif; }
main { max-width: 68rem; margin: 2rem auto; padding: 2.5rem 3rem; background: var(--page); border: 1px solid var(--line); border-top: 5px solid var(--accent); }
.name { margin: 0; color: var(--quiet); }
h1 { margin: .25rem 0 1.5rem; font-size: 1.75rem; line-height: 1.25; font-weight: 700; text-wrap: balance; }
h2 { margin: 2.25rem 0 .75rem; padding-bottom: .3rem; border-bottom: 1px solid var(--line); font-size: 1.15rem; }
figure { margin: 0; }
figure svg { display: block; width: 100%; height: auto; }
.paper { padding: .5rem; background: #fff; border: 1px solid var(--line); }
.chart { max-width: 44rem; margin-bottom: 1rem; }
.chart svg { color: inherit; }
.chart-stair { stroke: var(--accent); }
.chart-bar { fill: var(--accent); }
table { border-collapse: collapse; width: 100%; }
th, td { padding: .35rem .75rem .35rem 0; text-align: left; vertical-align: top; border-bottom: 1px solid var(--line); }
tr:last-child > * { border-bottom: 0; }
th { width: 14rem; font-weight: 400; color: var(--quiet); }
.number { white-space: nowrap; text-align: right; font-variant-numeric: tabular-nums; width: 7rem; }
.wide { overflow-x: auto; }
.columns { margin: .75rem 0 1rem; font-size: .9rem; }
.columns th { width: auto; vertical-align: bottom; border-bottom: 1px solid var(--ink); }
.columns .number { width: auto; white-space: normal; }
.columns td { white-space: nowrap; }
.columns td.number { white-space: nowrap; }
.columns .marked td { font-weight: 700; }
.columns .marked td:first-child { box-shadow: inset 4px 0 var(--accent); padding-left: .6rem; }
.parts th { color: inherit; }
.parts tr:last-child > * { font-weight: 700; border-top: 2px solid var(--ink); }
.share { padding-left: 1rem; vertical-align: middle; }
.bar { display: block; height: .8rem; background: var(--accent); }
.parts tr:not(:first-child) .bar { background: var(--quiet); }
.note { display: block; max-width: 44rem; color: var(--quiet); font-size: .9rem; }
.formula { color: var(--quiet); display: inline-block; }
ul { margin: 0; padding-left: 1.2rem; }
footer { color: var(--quiet); font-size: .9rem; }
footer h2 { font-size: 1rem; color: var(--ink); }
@media (max-width: 45rem) { main { margin: 0; padding: 1.25rem; border-left: 0; border-right: 0; } th { width: 9rem; } .share { display: none; } }
@media print {
  @page { size: A4; margin: 14mm; }
  :root { --ground: #fff; --page: #fff; --ink: #000; --quiet: #444; --line: #bbb; --accent: #a63426; }
  body { font-size: 10pt; }
  main { max-width: none; margin: 0; padding: 0; border: 0; }
  h1 { font-size: 15pt; }
  .paper { padding: 0; border: 0; }
  .bar { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  h2 { break-after: avoid; }
  .own-page { break-before: page; }
  .own-page .paper { max-width: 150mm; }
  tr, figure, footer { break-inside: avoid; }
}
`;

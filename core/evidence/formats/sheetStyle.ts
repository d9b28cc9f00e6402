// How a sheet looks on screen and on paper: a laboratory sheet. System typefaces, thin rules, white space; black on white
// throughout, so that nothing is lost in grey. Sizes for paper are in points. No grid: Chromium 114, on which the fallback
// runtime rests, may never end laying a broken grid out on pages.

import type { Sheet } from '../sheet.ts';

const BASE = `
:root { color-scheme: light; }
html { background: #fff; color: #111; }
body { margin: 0 auto; padding: 12mm 10mm; max-width: 186mm; font: 11pt/1.45 "Segoe UI", "Noto Sans", "Liberation Sans", "Helvetica Neue", Arial, sans-serif; font-variant-numeric: tabular-nums; }
header { border-bottom: 1.5pt solid #111; padding-bottom: 4mm; margin-bottom: 6mm; }
h1 { font-size: 20pt; line-height: 1.2; margin: 0 0 2mm; font-weight: 600; }
h2 { font-size: 14pt; line-height: 1.25; margin: 9mm 0 3mm; padding-top: 3mm; border-top: 0.5pt solid #777; font-weight: 600; break-after: avoid; }
section:first-of-type h2 { border-top: 0; margin-top: 0; padding-top: 0; }
h3 { font-size: 11.5pt; margin: 5mm 0 1.5mm; font-weight: 600; break-after: avoid; }
h4 { font-size: 10.5pt; margin: 3mm 0 1mm; font-weight: 600; break-after: avoid; }
p, ul, dl, table, figure { margin: 0 0 3.5mm; }
p { max-width: 160mm; white-space: pre-line; }
p.lead { font-size: 14pt; line-height: 1.35; font-weight: 600; }
p.small, p.caption, caption, figcaption, .made { font-size: 9.5pt; color: #333; }
p.caution { border-left: 3pt solid #111; padding-left: 3mm; font-weight: 600; }
ul { padding-left: 5mm; max-width: 160mm; }
li { margin-bottom: 1mm; }
dl { border-top: 0.35pt solid #bbb; }
dl div { display: flex; border-bottom: 0.35pt solid #bbb; }
dt, dd { margin: 0; padding: 0.6mm 0; }
dt { color: #333; flex: 0 0 58mm; padding-right: 4mm; }
dd { flex: 1; min-width: 0; overflow-wrap: anywhere; white-space: pre-line; }
table { border-collapse: collapse; width: 100%; font-size: 9.5pt; line-height: 1.35; }
caption { text-align: left; padding-bottom: 1.2mm; }
p.caption { margin: 0; max-width: none; }
.beside::after { content: ''; display: block; clear: both; }
.beside table { float: left; width: 48.5%; }
.beside table + table { float: right; }
th, td { text-align: left; vertical-align: top; padding: 0.8mm 2.5mm 0.8mm 0; border-bottom: 0.35pt solid #bbb; overflow-wrap: anywhere; }
.own { overflow-wrap: normal; }
.state, td.none { white-space: nowrap; }
th:last-child, td:last-child { padding-right: 0; }
thead th { border-bottom: 1pt solid #111; font-weight: 600; vertical-align: bottom; overflow-wrap: normal; }
tbody th { font-weight: 400; }
td { white-space: pre-line; }
.number { text-align: right; white-space: nowrap; }
thead .number { white-space: normal; }
code { font: 8pt/1.6 "Cascadia Mono", "DejaVu Sans Mono", "Liberation Mono", Menlo, Consolas, monospace; letter-spacing: -0.02em; }
.none { font-style: italic; color: #444; }
figure img { box-sizing: border-box; width: 100%; height: auto; max-height: 230mm; border: 0.35pt solid #bbb; }
p + .blank, dl + .blank { margin-top: 2mm; }
.blank + p { margin-top: 3.5mm; }
.blank { border-bottom: 0.5pt solid #111; min-height: 9mm; display: flex; align-items: flex-end; font-size: 9.5pt; color: #333; padding-bottom: 0.8mm; }
footer { margin-top: 10mm; border-top: 0.5pt solid #777; padding-top: 2mm; font-size: 9.5pt; color: #333; }
#windowDetails table, #windowDetails dl { font-size: 8pt; line-height: 1.2; margin-bottom: 1.8mm; }
#windowDetails th, #windowDetails td, #windowDetails dt, #windowDetails dd { padding-top: 0.3mm; padding-bottom: 0.3mm; }
#windowDetails h3 { margin-top: 4mm; }
#windowDetails h4 { font-size: 9pt; margin: 2mm 0 0.5mm; }
.beside thead .number { white-space: nowrap; }
#windowDetails .own { white-space: nowrap; }
#windowDetails caption { font-size: 8.5pt; padding-bottom: 0.5mm; }
#windowDetails p, #windowDetails ul { font-size: 8.5pt; line-height: 1.25; max-width: none; margin-bottom: 1.8mm; }
#windowDetails p.caption { margin: 0; }
#windowDetails li { margin-bottom: 0.3mm; }
@media print {
  body { padding: 0; max-width: none; }
  footer { margin-top: 4mm; break-before: avoid; }
  thead { display: table-header-group; }
  tr, dl div, li, figure, .blank { break-inside: avoid; }
  h2, h3, h4, caption, p.caption { break-after: avoid; }
  .own-page > h2 { break-before: page; }
  .whole { break-inside: avoid; }
}
`;

/** The style of a sheet on its paper. The line at the foot of every page is the shell's, which takes it from the title. */
export function sheetStyle(paper: Sheet['paper']): string {
  const size = paper === 'A4' ? '210mm 297mm' : '8.5in 11in';
  return `@page { size: ${size}; margin: 15mm 14mm 18mm; }${BASE}`;
}

/**
 * The look on paper, A4 and Letter alike: running header and footer in the margin of each sheet, folded lists open, no picture and no row cut in two.
 *
 * @param header text of the running header as a CSS string
 * @param footer text of the running footer as a CSS string
 */
export function printStyle(header: string, footer: string): string {
  return `
@page {
  margin: 19mm 16mm 18mm;
  @top-left { content: ${header}; font: 8pt system-ui, sans-serif; color: #52626b; }
  @bottom-left { content: ${footer}; font: 8pt system-ui, sans-serif; color: #52626b; }
  @bottom-right { content: counter(page) " / " counter(pages); font: 8pt system-ui, sans-serif; color: #52626b; }
}
@media print {
  html { font-size: 9.6pt; }
  body { line-height: 1.4; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  .sheet { max-width: none; padding: 0; }
  .skip, .contents, .pages, .screen, .facts .screen { display: none; }
  .columns { display: block; }
  .masthead { padding-top: 3mm; }
  section { padding-top: 6mm; }
  h2, h3, h4, .caution, figcaption, caption, summary, .reasons .level, .key, section > p:first-of-type { break-after: avoid; }
  p, li { orphans: 3; widows: 3; }
  figure, .answers > div, .reasons li, tr, dl.words > div, .empty, section > p:first-of-type { break-inside: avoid; }
  thead { display: table-header-group; }
  tbody tr:first-child, tbody tr:nth-child(2), tbody tr:last-child { break-before: avoid; }
  .chart, .table { overflow: visible; background: none; }
  .chart svg { min-width: 0; max-width: 100%; max-height: 225mm; }
  table { font-size: 8.2pt; min-width: 0; width: 100%; }
  thead th { font-size: 7.6pt; }
  th, td { padding: 1mm 2.4mm 1mm 0; }
  td.long, td.code, td.prose { min-width: 0; }
  td.code { font-size: 6.6pt; }
  td.number, .sub { white-space: normal; }
  a { color: inherit; text-decoration: none; }
  details::details-content { display: block; content-visibility: visible; block-size: auto; opacity: 1; }
  details > summary { list-style: none; }
  summary::-webkit-details-marker { display: none; }
  .answers { grid-template-columns: 1.15fr 1.6fr 1.05fr; gap: 2mm 5mm; }
  .answers > div { padding-top: 1mm; }
  #argument .answers { grid-template-columns: 1fr 1fr; gap: 2mm 7mm; }
  #argument .answers > div { break-inside: auto; }
  #argument > p { break-after: auto; }
  .answers p { margin: 0.5mm 0; font-size: 0.86rem; }
  #answers .answers p:not(.lead) { font-size: 0.82rem; line-height: 1.4; }
  .aside { margin: 1.5mm 0 0; padding-top: 1mm; font-size: 0.86rem; }
  #decisions th { min-width: 0; }
  #decisions table { font-size: 7.8pt; line-height: 1.3; }
  #decisions th, #decisions td { padding-top: 0.6mm; padding-bottom: 0.6mm; }
  #decisions tbody th a { font-size: 1.05rem; }
  #decisions caption, #key .lede { display: none; }
  #decisions .note { margin: 0; max-width: none; font-size: 7.8pt; line-height: 1.3; }
  #key p { margin: 1mm 0; max-width: none; font-size: 0.9rem; }
  #key figcaption { max-width: none; margin-bottom: 1.5mm; }
  #key figcaption p { font-size: 0.82rem; line-height: 1.35; }
  #key .figure-foot { display: none; }
  .kicker { margin: 0; }
  .masthead { padding-bottom: 1.5mm; }
  .masthead .organisation { margin: 0.5mm 0 0; font-size: 1rem; }
  .facts { font-size: 0.78rem; margin-top: 1mm; }
  .answers .lead { font-size: 1.08rem; margin: 0.8mm 0; }
  .part { display: none; }
  section.begins:not(:first-child) { break-before: page; padding-top: 0; margin-top: 0; }
  #answers, #decisions, #key { padding-top: 3mm; }
  #answers > h2, #decisions > h2, #key > h2 { font-size: 1.15rem; margin-bottom: 1mm; padding-bottom: 0.5mm; }
  #decisions .table { margin: 1mm 0; }
  #key figure { margin: 2mm 0; }
  #key .chart svg { max-height: 42mm; width: auto; }
  .masthead h1 { font-size: 1.5rem; }
}
`;
}

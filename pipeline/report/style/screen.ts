import { palette } from '../charts/palette.ts';

const SERIF = '"Iowan Old Style", Charter, "Palatino Linotype", Palatino, "Book Antiqua", Georgia, serif';
const SANS =
  'system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, "Liberation Sans", sans-serif';

/** The look of the pages on a screen, from telephone to desktop. */
export const screenStyle = `
:root { color-scheme: light; --ink: ${palette.ink}; --muted: ${palette.muted}; --rule: ${palette.rule}; --pale: #f3f6f7; --accent: ${palette.series}; --alarm: ${palette.failure}; --serif: ${SERIF}; --sans: ${SANS}; }
*, *::before, *::after { box-sizing: border-box; }
html { scroll-padding-top: 1rem; -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0; background: #fff; color: var(--ink); font: 1rem/1.55 var(--sans); overflow-wrap: anywhere; }
a { color: var(--accent); text-decoration-thickness: 1px; text-underline-offset: 2px; }
a:hover { text-decoration-thickness: 2px; }
:focus-visible { outline: 3px solid ${palette.overdue}; outline-offset: 2px; box-shadow: 0 0 0 2px var(--ink); }
.skip { position: absolute; left: -200vw; top: 0; background: #fff; padding: 0.6rem 1rem; z-index: 2; }
.hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.skip:focus { left: 0; }
h1, h2, h3, h4 { font-family: var(--serif); line-height: 1.2; font-weight: 600; margin: 0; text-wrap: balance; }
h1 { font-size: clamp(2rem, 6vw, 3rem); letter-spacing: -0.01em; }
h2 { font-size: 1.55rem; }
h3 { font-size: 1.15rem; }
h4 { font-size: 1rem; }
:lang(de) :is(p, li, dd, th, td, h1, h2, h3, h4, figcaption, caption, summary, label) { hyphens: auto; hyphenate-limit-chars: 12 5 4; }
p { margin: 0.6rem 0; max-width: 44rem; }
ul, ol { padding-left: 1.3rem; max-width: 44rem; }
.sheet { max-width: 78rem; margin: 0 auto; padding: 0 1.25rem 3rem; }
.masthead { border-top: 0.5rem solid var(--ink); padding: 1.1rem 0 1.2rem; border-bottom: 1px solid var(--ink); }
.kicker { max-width: none; font-size: 0.85rem; letter-spacing: 0.04em; color: var(--muted); margin: 0 0 0.35rem; }
.masthead .organisation { font-size: 1.1rem; margin: 0.35rem 0 0; }
.facts { display: flex; flex-wrap: wrap; gap: 0.3rem 1.8rem; margin: 1rem 0 0; font-size: 0.87rem; }
.facts div { display: flex; gap: 0.45rem; min-width: 0; }
.facts dt { color: var(--muted); flex: none; }
.facts dd { margin: 0; min-width: 0; }
.pages { padding: 0.7rem 0; border-bottom: 1px solid var(--rule); font-size: 0.92rem; }
.pages ul { list-style: none; margin: 0; padding: 0; display: flex; flex-wrap: wrap; gap: 0.25rem 1.1rem; max-width: none; }
.pages li { display: inline; padding: 0.15rem 0; }
.pages [aria-current] { color: var(--ink); font-weight: 650; text-decoration: none; }
.columns { display: block; }
.contents { margin: 1.4rem 0 0; font-size: 0.9rem; }
.contents h2 { font: 600 0.85rem/1.3 var(--sans); color: var(--muted); letter-spacing: 0.04em; }
.contents ol { list-style: none; padding: 0; margin: 0.4rem 0 0; columns: 9rem 3; column-gap: 1.2rem; max-width: none; }
.contents li { padding: 0.2rem 0; break-inside: avoid; }
main { min-width: 0; }
section { padding-top: 2.4rem; }
section section { padding-top: 1.5rem; }
section > h2 { border-bottom: 2px solid var(--ink); padding-bottom: 0.35rem; margin-bottom: 0.9rem; display: flex; gap: 0.7rem; align-items: baseline; }
section > h2 .number { color: var(--accent); font-variant-numeric: tabular-nums; }
.part { font-size: 0.85rem; font-weight: 650; letter-spacing: 0.04em; color: var(--muted); margin: 0 0 0.5rem; }
section.begins:not(:first-child) { margin-top: 2rem; }
.contents .begins { padding-top: 0.7rem; }
.contents .begins:first-child { padding-top: 0.2rem; }
.contents .begins span { display: block; font-size: 0.8rem; font-weight: 650; color: var(--muted); padding-bottom: 0.15rem; }
.lede { font: 600 1.2rem/1.3 var(--serif); }
.note, .left-out { color: var(--muted); font-size: 0.88rem; }
.answers { display: grid; gap: 1.3rem 2rem; grid-template-columns: repeat(auto-fit, minmax(min(15rem, 100%), 1fr)); }
.answers > div { border-top: 3px solid var(--accent); padding-top: 0.55rem; min-width: 0; }
.answers h3 { font: 500 0.95rem/1.3 var(--sans); color: var(--muted); }
.answers .lead { font: 600 1.3rem/1.3 var(--serif); margin: 0.35rem 0 0.3rem; }
.answers p { font-size: 0.93rem; margin: 0.25rem 0; }
.aside { border-top: 1px solid var(--rule); padding-top: 0.6rem; margin-top: 1.2rem; font-size: 0.93rem; max-width: none; color: var(--muted); }
.aside b { font-weight: 600; color: var(--ink); }
#decisions th:first-child { width: 15%; min-width: 6rem; }
#decisions th:nth-child(2) { width: 38%; min-width: 14rem; }
#decisions th:nth-child(3) { width: 27%; min-width: 11rem; }
#decisions th:nth-child(4) { min-width: 8rem; }
.more { color: var(--muted); }
.more::before { content: "· "; }
#decisions tbody th a { font: 600 1.15rem/1.2 var(--serif); }
.level { display: block; font-weight: 650; font-size: 0.8rem; color: var(--accent); }
.level.act { color: var(--alarm); }
.level.look { color: var(--muted); }
.ways { display: flex; flex-wrap: wrap; gap: 0.2rem 1.3rem; max-width: none; font-size: 0.93rem; }
.briefly { columns: 12rem; }
.cases { list-style: none; padding: 0; margin: 0; max-width: none; }
.case { display: grid; grid-template-columns: 6.5rem 1fr; gap: 0 1.2rem; padding: 1rem 0; border-top: 1px solid var(--rule); }
.case:first-child { border-top: 0; padding-top: 0.2rem; }
.case > * { min-width: 0; }
.case h3 { font-size: 1.5rem; overflow-wrap: anywhere; }
.case .where { color: var(--muted); font-size: 0.85rem; margin: 0.1rem 0 0; }
.reasons { max-width: 46rem; padding-left: 0.9rem; border-left: 4px solid var(--rule); margin: 0 0 1rem; }
.reasons.act { border-left-color: var(--alarm); }
.reasons.decide { border-left-color: var(--accent); }
.reasons.look { border-left-style: dotted; border-left-color: var(--muted); }
.reasons ul { list-style: none; padding: 0; margin: 0; }
.reasons li { margin: 0 0 0.6rem; }
.reasons p { margin: 0.1rem 0; max-width: none; }
.reasons .level { font-weight: 650; font-size: 0.85rem; color: var(--accent); }
.reasons.act .level { color: var(--alarm); }
.reasons.look .level { color: var(--muted); }
.reasons .next { font-size: 0.9rem; color: var(--muted); }
.reasons .next b { font-weight: 600; color: var(--ink); }
figure { margin: 1.5rem 0 1.8rem; }
figcaption { margin-bottom: 0.7rem; max-width: 46rem; }
figcaption .title { font-family: var(--serif); font-weight: 600; font-size: 1.08rem; line-height: 1.3; }
figcaption .number, caption .number { color: var(--accent); font-family: var(--sans); font-size: 0.85rem; font-weight: 650; margin-right: 0.5rem; }
figcaption p { font-size: 0.92rem; margin: 0.25rem 0 0; }
.chart { overflow-x: auto; position: relative; }
.chart svg { display: block; max-width: 100%; min-width: 36rem; height: auto; font-family: var(--sans); }
.figure-foot { display: flex; flex-wrap: wrap; align-items: center; gap: 0.2rem 1.4rem; min-height: 1.8rem; font-size: 0.85rem; color: var(--muted); margin-top: 0.5rem; }
.figure-foot p { margin: 0; }
.key { list-style: none; display: grid; grid-template-columns: repeat(auto-fill, minmax(min(23rem, 100%), 1fr)); gap: 0.35rem 1.3rem; padding: 0; margin: 0.7rem 0; font-size: 0.9rem; max-width: none; }
.key li { display: flex; align-items: flex-start; gap: 0.5rem; line-height: 1.35; }
.key svg { flex: none; font-family: var(--sans); }
.table { overflow-x: auto; margin: 1.2rem 0; position: relative; }
.chart, .table { background: linear-gradient(to right, #fff 2rem, transparent), linear-gradient(to left, #fff 2rem, transparent) 100% 0, linear-gradient(to right, #b9c4c9, transparent) 0 0, linear-gradient(to left, #b9c4c9, transparent) 100% 0; background-repeat: no-repeat; background-size: 3rem 100%, 3rem 100%, 0.7rem 100%, 0.7rem 100%; background-attachment: local, local, scroll, scroll; }
table { border-collapse: collapse; font-size: 0.9rem; font-variant-numeric: tabular-nums; min-width: min(100%, 36rem); }
caption span.title { display: inline-block; max-width: min(100%, calc(100vw - 6rem)); vertical-align: top; }
caption { text-align: left; font-family: var(--serif); font-weight: 600; font-size: 1rem; padding-bottom: 0.45rem; }
th, td { overflow-wrap: break-word; text-align: left; vertical-align: top; padding: 0.34rem 0.9rem 0.34rem 0; border-bottom: 1px solid var(--rule); font-weight: 400; }
thead th { color: var(--muted); font-size: 0.82rem; vertical-align: bottom; border-bottom: 1px solid var(--ink); line-height: 1.25; }
tbody th { font-weight: 600; }
td.number, th.number { text-align: right; }
td.number { white-space: nowrap; }
.figures { white-space: nowrap; }
.zero { color: #6b7a82; }
td.long { overflow-wrap: anywhere; min-width: 14rem; }
td.code { font-family: ui-monospace, "SF Mono", Menlo, Consolas, monospace; font-size: 0.78rem; overflow-wrap: anywhere; min-width: 16rem; }
td.prose { min-width: 14rem; }
@media screen {
  tr:has(> td.code) > th { overflow-wrap: anywhere; min-width: 11rem; }
  tr:has(> td.code) > td.code { min-width: 12rem; }
  #drift-measured table { font-size: 0.8rem; }
  #drift-measured :is(th, td) { padding-right: 0.5rem; }
  #drift-measured td.long { min-width: 11rem; }
}
tr.total > * { border-top: 1px solid var(--ink); font-weight: 600; }
.sub { display: block; color: var(--muted); font-size: 0.85em; white-space: nowrap; }
.sub.wraps { white-space: normal; margin-top: 0.2rem; }
.verdict { font-weight: 650; }
.verdict.shown { color: var(--alarm); }
details { margin: 1rem 0; border-top: 1px solid var(--rule); border-bottom: 1px solid var(--rule); }
details + details { border-top: 0; margin-top: -1rem; }
summary { cursor: pointer; padding: 0.5rem 0; font-weight: 600; font-size: 0.95rem; }
summary .number { color: var(--accent); font-size: 0.85rem; font-weight: 650; margin-right: 0.4rem; }
dl.words { max-width: 48rem; margin: 0.8rem 0; }
dl.words > div { padding: 0.25rem 0; }
dl.words dt { font-weight: 650; display: inline; }
dl.words dt::after { content: ":"; }
dl.words dd { display: inline; margin: 0 0 0 0.3rem; }
.caution { border-left: 4px solid var(--alarm); padding-left: 0.9rem; }
.cautions li { margin: 0.45rem 0; }
.empty { border-left: 4px solid var(--rule); padding: 0.5rem 0 0.5rem 1rem; background: var(--pale); }
.colophon { border-top: 1px solid var(--ink); margin-top: 3rem; padding-top: 0.8rem; font-size: 0.85rem; color: var(--muted); }
@media (min-width: 68rem) {
  .columns { display: grid; grid-template-columns: 13rem minmax(0, 54rem); gap: 0 3rem; }
  .contents { position: sticky; top: 1rem; align-self: start; max-height: calc(100vh - 2rem); overflow-y: auto; margin-top: 2.4rem; }
  .contents ol { columns: auto; }
}
#figure-key .chart svg { min-width: 0; }
.narrow { display: none; }
@media screen and (max-width: 36rem) {
  #decisions table, #decisions tbody, #decisions tr, #decisions td, #decisions tbody th { display: block; }
  #decisions thead { display: none; }
  #decisions caption { display: block; }
  #decisions td, #decisions tbody th { border: 0; padding: 0.1rem 0; min-width: 0; width: auto; }
  #decisions tr { border-bottom: 1px solid var(--rule); padding: 0.5rem 0; }
  #decisions .level { display: inline; }
  .narrow { display: inline; }
}
@media (max-width: 36rem) {
  .contents ol { columns: auto; max-height: 8.4rem; overflow-y: auto; border-bottom: 1px solid var(--rule); }
  .case { grid-template-columns: 1fr; gap: 0.5rem; }
  .sheet { padding: 0 1rem 2rem; }
  h2 { font-size: 1.35rem; }
}
`;

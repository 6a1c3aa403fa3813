import type { Review } from '../../findings/review-schema.ts';
import { groupBy } from '../../group-by.ts';
import { cssString } from '../html/content-policy.ts';
import { htmlDocument } from '../html/document.ts';
import { type Html, html } from '../html/html.ts';
import type { ReportContext } from '../page-context.ts';
import { liveTemplate } from '../script/live-template.ts';
import { pageScript } from '../script/page-script.ts';
import { liveStyle } from '../style/live.ts';
import { printStyle } from '../style/print.ts';
import { screenStyle } from '../style/screen.ts';
import type { Words } from '../words/words.ts';

export interface Section {
  id: string;
  heading: string;
  body: Html;
  /** Name of the part of the page that begins with this section. */
  part?: string;
}

export interface PageParts {
  title: string;
  heading: string;
  /** Stands below the heading: organisation, name of the unit. */
  under: Html;
  /** File name of the page, to mark it in the navigation. */
  path: string;
  /** Page and name of neighbours, for pages in a row. */
  neighbours?: { previous?: [string, string]; next?: [string, string] };
  sections: readonly Section[];
}

/** A whole page: one file, nothing loaded, complete without script. */
export function page(context: ReportContext, parts: PageParts): string {
  const { words, month, span, fingerprint, review } = context;
  const style =
    screenStyle +
    liveStyle +
    printStyle(
      cssString(words.pages.printHeader(review.organisation, month)),
      cssString(words.pages.printFooter(span, fingerprint)),
    );
  const body = html`<a class="skip" href="#content">${words.pages.skip}</a>
<div class="sheet">
<header class="masthead">
<p class="kicker">${words.pages.product}. ${words.pages.never}</p>
<h1>${parts.heading}</h1>
${parts.under}
${facts(context)}
</header>
${pagesNav(context, parts)}
<div class="columns">
<nav class="contents" aria-labelledby="contents-heading">
<h2 id="contents-heading">${words.pages.contents}</h2>
<ol>${parts.sections.map((section) => html`<li${section.part && html` class="begins"`}>${section.part && html`<span>${section.part}</span>`}<a href="#${section.id}">${section.heading}</a></li>`)}</ol>
</nav>
<main id="content" tabindex="-1">
${parts.sections.map(
  (
    { id, heading, body, part },
    index,
  ) => html`<section id="${id}"${part && html` class="begins"`} aria-labelledby="${id}-heading">
${
  part &&
  html`<p class="part">${part}</p>
`
}<h2 id="${id}-heading"><span class="number">${index + 1}</span> ${heading}</h2>
${body}
</section>
`,
)}</main>
</div>
<footer class="colophon">
<p>${words.pages.footer}</p>
<p>${words.pages.data}: ${span}. ${words.pages.fingerprint(review.totals.files, fingerprint)}, ${words.pages.version(review.version)}.</p>
</footer>
</div>
${liveTemplate(words)}`;
  return htmlDocument({ lang: words.lang, title: parts.title, style, script: pageScript, body });
}

function facts({ words, review, span, fingerprint }: ReportContext): Html {
  const { pages, format } = words;
  const newest = review.period.newest_event;
  const fact = (name: string, value: string, minor = false) =>
    html`<div${minor && html` class="screen"`}><dt>${name}</dt><dd>${value}</dd></div>`;
  return html`<dl class="facts">
${fact(pages.month, format.span(review.period.from, review.period.to))}
${fact(pages.data, span)}
${newest && fact(pages.newest, format.time(newest))}
${fact(pages.files, pages.fingerprint(review.totals.files, fingerprint), true)}
${fact(pages.sites, sitesText(review.sites, pages.site), true)}
</dl>`;
}

/** Links to more units are folded on the review, and on other pages left to it: each page with links to each unit would not stay light. */
const UNITS_IN_SIGHT = 40;

function pagesNav(
  { words, review, paged, unitPage, hasInterval }: ReportContext,
  { path, neighbours }: PageParts,
): Html {
  const { pages } = words;
  const link = (href: string, name: string) =>
    href === path
      ? html`<li><a href="${href}" aria-current="page">${name}</a></li>`
      : html`<li><a href="${href}">${name}</a></li>`;
  const previous = neighbours?.previous;
  const next = neighbours?.next;
  const unitsNav = (): Html | false => {
    const { length } = review.units;
    const list = () => html`<ul>${paged.map(({ unit }) => link(unitPage(unit)!, unit))}</ul>`;
    if (length <= UNITS_IN_SIGHT) return length > 0 && list();
    if (path !== 'index.html')
      return html`<ul><li><a href="index.html#units">${pages.allUnits(length)}</a></li></ul>`;
    return html`<ul><li><a href="#units" data-find-unit="">${pages.findUnit}</a></li></ul>
<details><summary>${pages.pagedUnits(paged.length, length)}</summary>${list()}</details>`;
  };
  return html`<nav class="pages" aria-label="${pages.pagesNav}">
<ul>
${link('index.html', pages.review)}
${link('meeting.html', words.changes.page)}
${link('comparisons.html', pages.comparisons)}
${hasInterval && link('interval.html', pages.interval)}
${link('records.html', pages.records)}
${link('methods.html', pages.methods)}
${link('review.xlsx', words.workbook.link)}
${previous && html`<li><a href="${previous[0]}" rel="prev">${pages.previous}: ${previous[1]}</a></li>`}
${next && html`<li><a href="${next[0]}" rel="next">${pages.nextUnit}: ${next[1]}</a></li>`}
</ul>
${unitsNav()}
</nav>`;
}

/** Sites on one clock are named together. */
function sitesText(sites: Review['sites'], text: Words['pages']['site']): string {
  const alike = groupBy(sites, ({ zone, day_starts }) => `${zone} ${day_starts}`);
  return [...alike.values()]
    .map((of) => text(of.map(({ name }) => name).join(', '), of[0]!.zone, of[0]!.day_starts))
    .join('; ');
}

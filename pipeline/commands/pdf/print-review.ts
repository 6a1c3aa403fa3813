import type { Review } from '../../findings/review-schema.ts';
import type { Terminal } from '../terminal.ts';
import { findChromium } from './find-chromium.ts';
import { type Paper, printPages } from './print-pages.ts';

const HOW =
  'Install a Chromium (for example the Debian package chromium, or npm install @sparticuz/chromium), or name one in CHROMIUM_PATH; each page can also be printed from any browser.';

/**
 * Prints the review, the page for the meeting and the pages of units that need attention to PDF, where a Chromium is at hand. Without one, or where printing fails, it
 * says so in a line: the review itself is made.
 */
export async function printReview(
  review: Pick<Review, 'attention_order' | 'period'>,
  folder: string,
  unitPages: readonly string[],
  paper: Paper,
  terminal: Terminal,
): Promise<void> {
  const { path, named } = await findChromium(process.env);
  if (path === undefined) {
    terminal.printError(
      named === undefined
        ? `No PDF was made: no Chromium was found. ${HOW}`
        : `No PDF was made: CHROMIUM_PATH must name a program that can be run, found "${named}". ${HOW}`,
    );
    return;
  }
  terminal.progress('Printing');
  try {
    const pages = ['index.html', 'meeting.html', ...unitPages];
    const written = await printPages(path, folder, pages, paper, review.period.to);
    terminal.progressDone();
    terminal.printError(`Printed ${written.join(', ')}.`);
  } catch (error) {
    terminal.progressDone();
    terminal.printError(`No PDF was made: ${(error as Error).message}. ${HOW}`);
  }
}

import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type BrowserPipe, openBrowser } from './browser-pipe.ts';

/** Sizes of paper, inches. */
export const PAPERS = { a4: [210 / 25.4, 297 / 25.4], letter: [8.5, 11] } as const;
export type Paper = keyof typeof PAPERS;

/**
 * Prints pages of a folder to PDF files beside them, with the margins and running headers of their own style, script off and no network.
 *
 * @param pages file names, each printed to the same name with the ending .pdf
 * @param dated day as yyyy-MM-dd that each file gives as its date, so that the clock stays out of it
 * @throws Error where the browser does not start, ends or does not answer
 */
export async function printPages(
  chromium: string,
  folder: string,
  pages: readonly string[],
  paper: Paper,
  dated: string,
): Promise<string[]> {
  const profile = await mkdtemp(join(tmpdir(), 'print-'));
  const browser = openBrowser(chromium, profile);
  try {
    const written: string[] = [];
    for (const page of pages) {
      const file = page.replace(/\.html$/, '.pdf');
      const pdf = await printPage(browser, pathToFileURL(resolve(folder, page)).href, paper);
      await writeFile(join(folder, file), settled(pdf, dated));
      written.push(file);
    }
    return written;
  } finally {
    await browser.end();
    await rm(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Links to other files would be printed with the place of the folder on this machine, and lead nowhere on another: only those inside the page are kept. */
const UNLINK = `for (const link of document.querySelectorAll('a[href]'))
  if (!link.getAttribute('href').startsWith('#')) link.removeAttribute('href')`;

async function printPage(browser: BrowserPipe, url: string, paper: Paper): Promise<Buffer> {
  const { targetId } = await browser.send('Target.createTarget', { url: 'about:blank' });
  const { sessionId } = await browser.send('Target.attachToTarget', { targetId, flatten: true });
  const session = String(sessionId);
  await browser.send('Page.enable', {}, session);
  await browser.send('Emulation.setScriptExecutionDisabled', { value: true }, session);
  const loaded = browser.event('Page.loadEventFired', session);
  const { errorText } = await browser.send('Page.navigate', { url }, session);
  if (errorText !== undefined) {
    loaded.catch(() => undefined);
    throw new Error(`${url}: ${String(errorText)}`);
  }
  await loaded;
  await browser.send('Runtime.evaluate', { expression: UNLINK }, session);
  const [paperWidth, paperHeight] = PAPERS[paper];
  const { data } = await browser.send(
    'Page.printToPDF',
    { paperWidth, paperHeight, preferCSSPageSize: false, printBackground: true, generateTaggedPDF: true },
    session,
  );
  await browser.send('Target.closeTarget', { targetId });
  return Buffer.from(String(data), 'base64');
}

/**
 * The document with what differs from run to run made the same: the day in place of the time at which it was made, and names of table cells by their rank in place of the
 * browser's own numbers. Nothing changes its length or order, so that the file's own table of places still holds.
 */
function settled(pdf: Buffer, day: string): Buffer {
  const text = pdf.toString('latin1');
  const date = `D:${day.replaceAll('-', '')}000000`;
  const names = [...new Set(text.match(NODE_NAME))].sort();
  const rank = new Map(names.map((name, index) => [name, `(node${String(index + 1).padStart(8, '0')})`]));
  return Buffer.from(
    text
      .replace(/\/(CreationDate|ModDate) \(D:\d{14}/g, (_, name: string) => `/${name} (${date}`)
      .replace(NODE_NAME, (name) => rank.get(name)!),
    'latin1',
  );
}

/** Name of a table's cell, by which other cells say that it heads them. */
const NODE_NAME = /\(node\d{8}\)/g;

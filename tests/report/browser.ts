import { existsSync } from 'node:fs';
import chromium from '@sparticuz/chromium';
import { type Browser, type BrowserContext, chromium as playwright } from 'playwright-core';

const INSTALLED = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Starts a Chromium without a window: an installed one where there is one, else the one from the registry. */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = INSTALLED.find((path) => existsSync(path)) ?? (await chromium.executablePath());
  return playwright.launch({
    executablePath,
    args: ['--no-sandbox', '--headless', '--disable-gpu', '--disable-background-networking'],
  });
}

/** What a page did that it should not: console messages, errors, requests other than for itself. */
export interface Watched {
  context: BrowserContext;
  complaints: string[];
}

/** A browser context with no network, that keeps a list of everything a page says or asks for. Only files from disk open. */
export async function offlineContext(
  browser: Browser,
  options: {
    javaScriptEnabled: boolean;
    viewport?: { width: number; height: number };
    hasTouch?: boolean;
  },
): Promise<Watched> {
  const context = await browser.newContext({ ...options, offline: true, locale: 'en-GB' });
  const complaints: string[] = [];
  context.on('page', (page) => {
    let own: string | undefined;
    page.on('console', (message) => complaints.push(`console ${message.type()}: ${message.text()}`));
    page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
    page.on('request', (request) => {
      if (request.isNavigationRequest() && own === undefined) own = request.url();
      else if (request.url() !== own) complaints.push(`request: ${request.url()}`);
    });
  });
  return { context, complaints };
}

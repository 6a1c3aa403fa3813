import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { RECORD_SHEETS } from '../../pipeline/templates/record-sheets.ts';
import { sheetPage } from '../../pipeline/templates/sheet-page.ts';
import { launchBrowser, offlineContext } from '../report/browser.ts';

let browser: Browser;
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'sheets-'));
  for (const sheet of RECORD_SHEETS) await writeFile(join(folder, `${sheet.file}.html`), sheetPage(sheet));
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

describe('printed record sheets', () => {
  for (const sheet of RECORD_SHEETS)
    it(`${sheet.file}: one side of A4 and of Letter, loads nothing, reads well, cautions on it`, async () => {
      const { context, complaints } = await offlineContext(browser, {
        javaScriptEnabled: true,
        viewport: { width: 390, height: 800 },
      });
      const page = await context.newPage();
      await page.goto(pathToFileURL(join(folder, `${sheet.file}.html`)).href);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
      const text = (await page.textContent('body'))!;
      for (const caution of sheet.cautions) expect(text).toContain(caution);
      for (const { head, words } of sheet.columns) {
        expect(text).toContain(head);
        for (const word of words) expect(text).toContain(word);
      }
      for (const format of ['A4', 'Letter'] as const) {
        const pdf = (await page.pdf({ format, landscape: true })).toString('latin1');
        expect(pdf.match(/\/Type\s*\/Page\b/g)?.length, format).toBe(1);
      }
      expect(complaints).toEqual([]);
      await context.close();
    });
});

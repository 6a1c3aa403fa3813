import { fileURLToPath } from 'node:url';
import { writeFolder } from '../../pipeline/commands/write-files.ts';
import { notebookPage, notebooksIndex } from './notebook-page.ts';
import { notebookNames, type RunNotebook, runNotebook } from './run-notebook.ts';

/** Runs all notebooks and writes them as pages into `reports/notebooks`. */
const folder = fileURLToPath(new URL('../../reports/notebooks', import.meta.url));
const notebooks: RunNotebook[] = [];
for (const name of await notebookNames()) {
  notebooks.push(await runNotebook(name));
  console.log(`Ran ${name}`);
}
const files = [{ path: 'index.html', content: notebooksIndex(notebooks) }];
for (const notebook of notebooks)
  files.push({ path: `${notebook.name}.html`, content: await notebookPage(notebook, notebooks) });
await writeFolder(folder, files);
console.log(`Open ${folder}/index.html`);

import { readdirSync, readFileSync } from 'node:fs';

const FOLDER = new URL('../statistics/', import.meta.url);

/** A method as its docstring gives it: paragraphs, and where it comes from. */
interface Method {
  name: string;
  file: string;
  paragraphs: string[];
  source: string;
}

/** The methods of one folder of the statistics stage: exported functions whose docstring names a source. */
function methodsOf(folder: string): Method[] {
  const files = readdirSync(new URL(`${folder}/`, FOLDER))
    .filter((file) => file.endsWith('.ts'))
    .sort();
  return files.flatMap((file) => {
    const text = readFileSync(new URL(`${folder}/${file}`, FOLDER), 'utf8');
    return [...text.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nexport function (\w+)/g)].flatMap(
      ([, doc, name]) => {
        const paragraphs = doc!
          .split('\n')
          .map((line) => line.replace(/^\s*\* ?/, '').trim())
          .join('\n')
          .split(/\n\s*\n|\n(?=@)/)
          .map((paragraph) => paragraph.replace(/\s+/g, ' ').trim())
          .filter((paragraph) => paragraph !== '');
        const source = paragraphs.find((paragraph) => /^Sources?:/.test(paragraph));
        if (!source) return [];
        const told = paragraphs.filter((paragraph) => paragraph !== source && !paragraph.startsWith('@'));
        return [{ name: name!, file: `${folder}/${file}`, paragraphs: told, source }];
      },
    );
  });
}

/** The page of all statistical methods: what each does, assumes and refuses, and its source, from the docstrings. */
export function methodsPage(made: string): string {
  const folders = readdirSync(FOLDER, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort();
  const parts = folders.flatMap((folder) => {
    const methods = methodsOf(folder);
    if (methods.length === 0) return [];
    const texts = methods.map(
      ({ name, file, paragraphs, source }) =>
        `### ${name}\n\n${paragraphs.join('\n\n')}\n\n${source}\n\nCode: \`pipeline/statistics/${file}\`; check values beside it in \`tests/statistics\`.`,
    );
    return [`## ${folder.replaceAll('-', ' ')}\n\n${texts.join('\n\n')}`];
  });
  return `# Statistical methods\n\n${made}\n\nWhat of these departs from the published form, and why, is in \`pipeline/statistics/README.md\`. How the user's questions are put to them is said on the methods page of each review.\n\n${parts.join('\n\n')}\n`;
}

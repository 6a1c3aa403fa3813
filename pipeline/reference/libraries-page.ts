import { readFileSync } from 'node:fs';
import { build } from 'esbuild';
import { settings } from '../bundle/settings.mjs';
import { byCodeUnit } from '../by-code-unit.ts';

interface Locked {
  version: string;
  license?: string;
}

const locked = (): Record<string, Locked> =>
  JSON.parse(readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8')).packages;

/** Places of the packages of which something goes into the bundle, and of those that are installed with the package. */
async function placesInPackage(): Promise<Set<string>> {
  const { metafile } = await build({ ...settings, write: false, metafile: true as const });
  const places = new Set<string>();
  for (const input of Object.keys(metafile.inputs)) {
    const found = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input);
    if (found) places.add(found[0]);
  }
  const { dependencies } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  for (const name of Object.keys(dependencies)) places.add(`node_modules/${name}`);
  return places;
}

/** Every library of which code goes to a user, with version and licence. */
export async function librariesInPackage(): Promise<{ name: string; version: string; licence: string }[]> {
  const packages = locked();
  return [...(await placesInPackage())]
    .map((place) => ({
      name: place.replace(/^.*node_modules\//, ''),
      version: packages[place]?.version ?? '',
      licence: packages[place]?.license ?? 'none stated',
    }))
    .sort((a, b) => byCodeUnit(a.name, b.name));
}

/** Licences of the tools that only contributors install, with how many have each. */
export function licencesOfTools(): [string, number][] {
  const counts = new Map<string, number>();
  for (const [place, { license }] of Object.entries(locked()))
    if (place !== '') counts.set(license ?? 'none stated', (counts.get(license ?? 'none stated') ?? 0) + 1);
  return [...counts].sort(([a], [b]) => (a < b ? -1 : 1));
}

export async function librariesPage(made: string): Promise<string> {
  const rows = (await librariesInPackage()).map(
    ({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`,
  );
  const tools = licencesOfTools().map(([licence, count]) => `| ${licence} | ${count} |`);
  return `# Libraries and their licences\n\n${made}\n\nCode of these libraries goes into the package, bundled or installed with it. All are under permissive licences; a test refuses any other. Their texts are in \`dist/*.LEGAL.txt\`.\n\n| library | version | licence |\n| --- | --- | --- |\n${rows.join('\n')}\n\nAll packages that a contributor installs, these included, by licence:\n\n| licence | packages |\n| --- | --- |\n${tools.join('\n')}\n`;
}

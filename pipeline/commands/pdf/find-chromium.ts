import { constants } from 'node:fs';
import { access, stat } from 'node:fs/promises';
import { delimiter, join } from 'node:path';

/** Names under which a Chromium, or a browser made from it, stands on the path of programs. */
const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
  'msedge',
];

/** Where installers put one without adding it to the path. */
const PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** Packages of a registry that bring one, if they happen to be installed. */
const PACKAGES = ['@sparticuz/chromium'];

/**
 * Finds a Chromium: the one that CHROMIUM_PATH names, else one on the path of programs or in a usual place, else one that an installed package brings.
 * Nothing is fetched.
 *
 * @returns its path, undefined where there is none; `named` where CHROMIUM_PATH names a file that can't be run
 */
export async function findChromium(
  env: Readonly<Record<string, string | undefined>>,
): Promise<{ path: string | undefined; named?: string }> {
  const named = env.CHROMIUM_PATH;
  if (named !== undefined && named !== '')
    return (await canRun(named)) ? { path: named } : { path: undefined, named };
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const endings = process.platform === 'win32' ? ['.exe'] : [''];
  const candidates = folders.flatMap((folder) =>
    NAMES.flatMap((name) => endings.map((ending) => join(folder, `${name}${ending}`))),
  );
  for (const candidate of [...candidates, ...PLACES]) if (await canRun(candidate)) return { path: candidate };
  for (const name of PACKAGES) {
    const path = await fromPackage(name);
    if (path !== undefined && (await canRun(path))) return { path };
  }
  return { path: undefined };
}

const canRun = async (path: string): Promise<boolean> => {
  try {
    await access(path, constants.X_OK);
    return (await stat(path)).isFile();
  } catch {
    return false;
  }
};

async function fromPackage(name: string): Promise<string | undefined> {
  try {
    const found = (await import(name)) as { default: { executablePath(): Promise<string> } };
    return await found.default.executablePath();
  } catch {
    return undefined;
  }
}

import { run } from '../../pipeline/commands/main.ts';
import type { Terminal } from '../../pipeline/commands/terminal.ts';

/** Runs the program as a user would and gives what it printed. */
export async function runProgram(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const terminal: Terminal = {
    print: (text) => {
      out += `${[...text].join('')}\n`;
    },
    printError: (text) => {
      err += `${text}\n`;
    },
    progress: () => undefined,
    progressDone: () => undefined,
  };
  const code = await run(argv, terminal);
  return { code, out, err };
}

import { createInterface } from 'node:readline';

/** What a command may do to the outside: print, show progress, end. Tests pass their own. */
export interface Terminal {
  /** A text that may be longer than one can be comes in pieces. */
  print(text: string | Iterable<string>): void;
  printError(text: string): void;
  /** Asks a question and gives the line that was typed; undefined where the input has ended. Left out where nobody can be asked. */
  ask?(question: string): Promise<string | undefined>;
  /** Shows what is going on, where someone watches and the work takes over a second; nothing otherwise. */
  progress(text: string): void;
  /** Takes the line of progress away. */
  progressDone(): void;
}

/** The terminal of the process. Colours are never printed, so NO_COLOR is obeyed by nature; progress goes to stderr, only where that is a terminal. */
export function processTerminal(): Terminal {
  const watched = process.stderr.isTTY === true;
  // Who reads what is printed, such as `head`, may have enough of it: that is no fault.
  process.stdout.once('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  const began = performance.now();
  let shown = false;
  const clear = () => {
    if (shown) process.stderr.write('\r\u001b[K');
    shown = false;
  };
  const ask = async (question: string): Promise<string | undefined> => {
    clear();
    const lines = createInterface({ input: process.stdin, output: process.stderr });
    try {
      return await new Promise((resolve) => {
        lines.once('close', () => resolve(undefined));
        lines.question(question, resolve);
      });
    } finally {
      lines.close();
    }
  };
  return {
    ...(process.stdin.isTTY ? { ask } : {}),
    print: (text) => {
      clear();
      if (typeof text === 'string') process.stdout.write(`${text}\n`);
      else {
        for (const piece of text) process.stdout.write(piece);
        process.stdout.write('\n');
      }
    },
    printError: (text) => {
      clear();
      process.stderr.write(`${text}\n`);
    },
    progress: (text) => {
      if (!watched || performance.now() - began < 1000) return;
      clear();
      process.stderr.write(text.slice(0, (process.stderr.columns ?? 80) - 1));
      shown = true;
    },
    progressDone: clear,
  };
}

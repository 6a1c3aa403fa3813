import { type ChildProcess, spawn } from 'node:child_process';
import type { Readable, Writable } from 'node:stream';

/** Longest wait for one answer of the browser, ms. */
const PATIENCE = 120_000;

type Answer = Record<string, unknown>;
interface Waiting {
  resolve(answer: Answer): void;
  reject(error: Error): void;
}

/** A browser that is told what to do over a pipe. */
export interface BrowserPipe {
  /** Sends a command of the DevTools protocol; the answer is its result. */
  send(method: string, parameters?: object, session?: string): Promise<Answer>;
  /** The next event of a name in a session. */
  event(method: string, session: string): Promise<Answer>;
  end(): Promise<void>;
}

/**
 * Starts a Chromium without a window and without network, and speaks with it over a pipe: messages of the DevTools protocol as JSON, each ended by a NUL.
 *
 * @param profile empty folder for its files
 * @throws Error where it does not start or ends by itself
 */
export function openBrowser(path: string, profile: string): BrowserPipe {
  const child = spawn(
    path,
    [
      '--headless',
      '--remote-debugging-pipe',
      `--user-data-dir=${profile}`,
      '--disable-gpu',
      '--no-first-run',
      '--no-default-browser-check',
      '--disable-extensions',
      '--disable-sync',
      '--disable-background-networking',
      '--disable-component-update',
      '--host-resolver-rules=MAP * ~NOTFOUND',
      // Chromium has no sandbox for the superuser; it opens nothing but our own pages from disk, without script.
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ],
    { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] },
  );
  const [, , , input, output] = child.stdio as unknown as [null, null, null, Writable, Readable];
  const answers = new Map<number, Waiting>();
  const events = new Map<string, Waiting[]>();
  let failed: Error | undefined;
  const fail = (error: Error) => {
    failed ??= error;
    for (const { reject } of [...answers.values(), ...[...events.values()].flat()]) reject(failed);
    answers.clear();
    events.clear();
  };
  child.on('error', (error) => fail(error));
  child.on('exit', (code, signal) => fail(new Error(`the browser ended (${signal ?? code})`)));
  // A pipe that breaks is the end of the browser, which is told by its exit.
  input.on('error', () => undefined);
  readMessages(output, (message) => {
    const { id, method, sessionId, error } = message as {
      id?: number;
      method?: string;
      sessionId?: string;
      error?: { message: string };
    };
    if (id === undefined) {
      const key = `${sessionId} ${method}`;
      for (const { resolve } of events.get(key) ?? []) resolve((message.params ?? {}) as Answer);
      events.delete(key);
      return;
    }
    const waiting = answers.get(id);
    answers.delete(id);
    if (error) waiting?.reject(new Error(error.message));
    else waiting?.resolve((message.result ?? {}) as Answer);
  });
  let last = 0;
  const wait = (what: string, add: (waiting: Waiting) => void): Promise<Answer> => {
    if (failed) return Promise.reject(failed);
    let timer: NodeJS.Timeout | undefined;
    return new Promise<Answer>((resolve, reject) => {
      timer = setTimeout(() => reject(new Error(`the browser did not answer in time (${what})`)), PATIENCE);
      add({ resolve, reject });
    }).finally(() => clearTimeout(timer));
  };
  return {
    send: (method, params = {}, sessionId) =>
      wait(method, (waiting) => {
        const id = ++last;
        answers.set(id, waiting);
        input.write(`${JSON.stringify({ id, method, params, ...(sessionId && { sessionId }) })}\0`);
      }),
    event: (method, session) =>
      wait(method, (waiting) => {
        const key = `${session} ${method}`;
        events.set(key, [...(events.get(key) ?? []), waiting]);
      }),
    end: () => ended(child),
  };
}

function readMessages(output: Readable, take: (message: Answer) => void): void {
  let chunks: Buffer[] = [];
  output.on('data', (chunk: Buffer) => {
    let from = 0;
    for (let at = chunk.indexOf(0); at >= 0; at = chunk.indexOf(0, from)) {
      take(JSON.parse(Buffer.concat([...chunks, chunk.subarray(from, at)]).toString('utf8')));
      chunks = [];
      from = at + 1;
    }
    if (from < chunk.length) chunks.push(chunk.subarray(from));
  });
}

/** Ends the browser and waits until it is gone. */
function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null || child.pid === undefined)
    return Promise.resolve();
  return new Promise((resolve) => {
    child.once('exit', () => resolve());
    child.kill('SIGKILL');
  });
}

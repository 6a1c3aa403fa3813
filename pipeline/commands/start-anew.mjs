// The program in a process of its own. This one waits for it, so signals and the way it ends must get through in both directions.
import { spawn } from 'node:child_process';
import { constants } from 'node:os';

/** What a user, a scheduler or a closed terminal sends to end a program. */
const PASSED_ON = ['SIGINT', 'SIGTERM', 'SIGHUP'];
/** How the machine ends a program that asks for too much memory, and the engine itself. */
const OUT_OF_MEMORY = new Set(['SIGKILL', 'SIGABRT']);

/**
 * Runs Node with arguments and ends this process as that one ended: with its exit code, or by its signal, which is said unless it was only passed on.
 *
 * @param {readonly string[]} args
 */
export async function startAnew(args) {
  const child = spawn(process.execPath, args, { stdio: 'inherit' });
  let passed;
  const passOn = (signal) => {
    passed = signal;
    child.kill(signal);
  };
  for (const signal of PASSED_ON) process.on(signal, passOn);
  const [code, signal] = await new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (...ended) => resolve(ended));
  });
  for (const each of PASSED_ON) process.off(each, passOn);
  process.exitCode = code ?? 128 + constants.signals[signal];
  if (signal === null) return;
  if (signal !== passed)
    console.error(
      `The program was ended by ${signal}${OUT_OF_MEMORY.has(signal) ? ', perhaps for want of memory' : ''}.`,
    );
  // Who started it learns from the signal that the whole is to end.
  if (PASSED_ON.includes(signal)) process.kill(process.pid, signal);
}

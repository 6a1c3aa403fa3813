import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';

/** Jobs for processes of their own, one a core. */
export interface ProcessJobs<Job, Answer> {
  /** Module that answers each job that is sent to it. */
  worker: URL;
  jobs: readonly Job[];
  take(answer: Answer): void;
  /** What a job is about, in the plural, for the line of progress. */
  what: string;
  /** Whether further jobs are to be begun; left out: always. Those that were begun are waited for. */
  goOn?: () => boolean;
}

/** Gives jobs to processes and takes their answers as they come. */
export function runInProcesses<Job extends object, Answer>({
  worker: module,
  jobs,
  take,
  what,
  goOn = () => true,
}: ProcessJobs<Job, Answer>): Promise<void> {
  return new Promise((resolve, reject) => {
    let next = 0;
    let done = 0;
    for (let core = 0; core < Math.min(availableParallelism(), jobs.length); core++) {
      const worker = fork(fileURLToPath(module), { execArgv: ['--import', 'tsx'] });
      const give = () => (next < jobs.length && goOn() ? worker.send(jobs[next++]!) : worker.disconnect());
      worker.on('error', reject);
      worker.on('exit', (code) => code !== 0 && reject(new Error(`a worker ended with ${code}`)));
      worker.on('message', (answer: Answer) => {
        take(answer);
        done++;
        if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${jobs.length} ${what} `);
        give();
        if (done === next && (done === jobs.length || !goOn())) resolve();
      });
      give();
    }
  });
}

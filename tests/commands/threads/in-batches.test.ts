import { describe, expect, it } from 'vitest';
import { inBatches } from '../../../pipeline/commands/threads/in-batches.ts';

/** What is answered to so many questions, and how they were put. */
async function ask(questions: number, threads: number) {
  const sizes: number[] = [];
  const one = inBatches(threads, async (batch: readonly number[]) => {
    sizes.push(batch.length);
    return batch.map((of) => 10 * of);
  });
  const answers = await Promise.all(Array.from({ length: questions }, (_, at) => one(at)));
  return { sizes, answers };
}

describe('questions in batches', () => {
  it('are each answered by its own', async () => {
    for (const questions of [1, 31, 64, 1000]) {
      const { sizes, answers } = await ask(questions, 2);
      expect(answers).toEqual(Array.from({ length: questions }, (_, at) => 10 * at));
      expect(sizes.reduce((sum, size) => sum + size, 0)).toBe(questions);
    }
  });

  it('are put one by one where they are few, so that no thread is without one', async () => {
    expect((await ask(31, 2)).sizes).toEqual(Array.from({ length: 31 }, () => 1));
    expect((await ask(64, 2)).sizes).toEqual(Array.from({ length: 32 }, () => 2));
  });

  it('stay small where they are many', async () => {
    expect(Math.max(...(await ask(10_000, 2)).sizes)).toBe(16);
  });

  it('fail together where one of a batch fails, and no others do', async () => {
    const one = inBatches(1, async (batch: readonly number[]) => {
      if (batch.includes(3)) throw new Error('no answer');
      return batch;
    });
    const answers = await Promise.allSettled(Array.from({ length: 32 }, (_, at) => one(at)));
    expect(answers.flatMap(({ status }, at) => (status === 'rejected' ? [at] : []))).toEqual([2, 3]);
  });
});

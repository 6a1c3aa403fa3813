/** Fewest batches that a thread is given, so that all end at about one time. */
const BATCHES_OF_THREAD = 16;
/** Most that is asked for at once: what is said with each question has long lost its weight. */
const MOST_AT_ONCE = 16;

/**
 * Puts together what is asked for at one time, so that many small questions cost as few as a thread can share fairly. Answers, and errors, come as if each was asked by itself, but those of a batch at
 * once.
 *
 * @param ask answers all of a batch, in order
 */
export function inBatches<Question, Answer>(
  threads: number,
  ask: (batch: readonly Question[]) => Promise<readonly Answer[]>,
): (question: Question) => Promise<Answer> {
  let waiting: { question: Question; answer: (of: Promise<Answer>) => void }[] = [];
  const askAll = (): void => {
    const size = Math.max(
      1,
      Math.min(MOST_AT_ONCE, Math.floor(waiting.length / (threads * BATCHES_OF_THREAD))),
    );
    for (let at = 0; at < waiting.length; at += size) {
      const batch = waiting.slice(at, at + size);
      const answers = ask(batch.map(({ question }) => question));
      for (const [place, { answer }] of batch.entries()) answer(answers.then((of) => of[place]!));
    }
    waiting = [];
  };
  return (question) =>
    new Promise((answer) => {
      if (waiting.length === 0) queueMicrotask(askAll);
      waiting.push({ question, answer });
    });
}

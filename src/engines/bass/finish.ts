/** Does stepwise work in one go. */
export const finish = <T>(work: Generator<void, T>): T => {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
};

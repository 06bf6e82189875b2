/** One task at a time; while it runs, only the newest of the later ones waits. Ended ones are never answered. */
export type NewestOnly<I, O> = {
  readonly ask: (input: I, answer: (output: O) => void) => void;
  /** To be called with the running task's outcome. */
  readonly answered: (output: O) => void;
};

export function newestOnly<I, O>(start: (input: I) => void): NewestOnly<I, O> {
  type Asked = { readonly input: I; readonly answer: (output: O) => void };
  let running: Asked | null = null;
  let waiting: Asked | null = null;

  function begin(asked: Asked) {
    running = asked;
    start(asked.input);
  }

  return {
    ask(input, answer) {
      if (running) waiting = { input, answer };
      else begin({ input, answer });
    },
    answered(output) {
      const done = running;
      running = null;
      if (waiting) {
        const next = waiting;
        waiting = null;
        begin(next);
      }
      done?.answer(output);
    },
  };
}

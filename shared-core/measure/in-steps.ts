/**
 * Long work as a generator that yields now and then, so that whoever runs it may look after something else in between.
 * What it comes to is what it returns.
 */
export type InSteps<Value> = Generator<undefined, Value, undefined>;

/** Runs it to its end in one go. */
export function finished<Value>(work: InSteps<Value>): Value {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** Which time a bench counts. */

/** Milliseconds by the wall, or that the processor spent on this thread: a busy machine changes the latter little. */
export function benchClock(isProcessor: boolean): () => number {
  if (!isProcessor) return () => performance.now();
  return () => {
    const { user, system } = process.threadCpuUsage();
    return (user + system) / 1000;
  };
}

/** Calls go together; work that replaces the file under them waits until none is under way and goes alone. */

export interface Turns {
  together<Value>(work: () => Promise<Value>): Promise<Value>;
  alone<Value>(work: () => Promise<Value>): Promise<Value>;
}

export function openTurns(): Turns {
  const underWay = new Set<Promise<unknown>>();
  let lone: Promise<unknown> | null = null;
  return {
    async together(work) {
      // Another may have gone ahead while this one waited.
      while (lone !== null) await lone;
      const mine = work();
      underWay.add(mine);
      try {
        return await mine;
      } finally {
        underWay.delete(mine);
      }
    },
    alone(work) {
      const before = lone;
      const earlier = [...underWay];
      const mine = (async () => {
        await before;
        await Promise.allSettled(earlier);
        return work();
      })();
      const over = mine
        .catch(() => {})
        .then(() => {
          if (lone === over) lone = null;
        });
      lone = over;
      return mine;
    },
  };
}

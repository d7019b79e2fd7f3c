/** Keeps the answers asked for most recently, at most `limit` of them. */
export const createRecent = <T>(limit: number) => {
  const kept = new Map<string, T>();
  return {
    get(key: string, make: () => T): T {
      const found = kept.get(key);
      const value = found ?? make();
      // A Map remembers the order of insertion: taking out and putting back makes this the newest.
      kept.delete(key);
      kept.set(key, value);
      if (kept.size > limit) kept.delete(kept.keys().next().value as string);
      return value;
    },
    /** Drops the oldest until the rest weighs no more than `most`; the newest stays. */
    trim(weigh: (value: T) => number, most: number): void {
      let total = 0;
      for (const value of kept.values()) total += weigh(value);
      for (const [key, value] of kept) {
        if (total <= most || kept.size === 1) return;
        kept.delete(key);
        total -= weigh(value);
      }
    },
    has: (key: string): boolean => kept.has(key),
    get size() {
      return kept.size;
    },
  };
};

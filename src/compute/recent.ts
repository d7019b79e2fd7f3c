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
    has: (key: string): boolean => kept.has(key),
    get size() {
      return kept.size;
    },
  };
};

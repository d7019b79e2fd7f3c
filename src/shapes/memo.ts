/** Keeps at most `limit` made things by key, letting go of the one unused for longest. */
export const memoOf = <T>(limit: number): ((key: string, make: () => T) => T) => {
  const kept = new Map<string, T>();
  return (key, make) => {
    const found = kept.get(key);
    if (found !== undefined) {
      kept.delete(key);
      kept.set(key, found);
      return found;
    }
    const made = make();
    kept.set(key, made);
    if (kept.size > limit) {
      const oldest = kept.keys().next();
      if (!oldest.done) kept.delete(oldest.value);
    }
    return made;
  };
};

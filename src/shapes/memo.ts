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

/** Keeps what is worked out from a document, or a part of one, for as long as that lives: documents never change. */
export const keptWith = <Key extends object, T>(make: (key: Key) => T): ((key: Key) => T) => {
  const kept = new WeakMap<Key, { readonly made: T }>();
  return (key) => {
    const found = kept.get(key);
    if (found) return found.made;
    const made = make(key);
    kept.set(key, { made });
    return made;
  };
};

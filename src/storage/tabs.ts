/** Tells the other tabs of this browser that a room was written. */
export interface TabTalk {
  kept(id: string): void;
  /** Hears of rooms written by other tabs. */
  onKept(heard: (id: string) => void): () => void;
}

/** Where tabs cannot talk each is alone: nothing is heard and nothing fails. */
export const tabTalk = (): TabTalk => {
  if (typeof BroadcastChannel === 'undefined') return { kept: () => {}, onKept: () => () => {} };
  const channel = new BroadcastChannel('parterre/rooms');
  return {
    kept: (id) => channel.postMessage(id),
    onKept(heard) {
      const listen = ({ data }: MessageEvent) => {
        if (typeof data === 'string') heard(data);
      };
      channel.addEventListener('message', listen);
      return () => channel.removeEventListener('message', listen);
    },
  };
};

/**
 * Asks to be the one tab that may change a room. `heard(false)` comes at once while another tab holds it, `heard(true)` as
 * soon as this one does, which may be when the other closes. The answer lets go. A browser without locks says true.
 */
export const claimRoom = (id: string, heard: (mine: boolean) => void): (() => void) => {
  if (!('locks' in navigator)) {
    heard(true);
    return () => {};
  }
  const name = `parterre/room/${id}`;
  const away = new AbortController();
  let letGo = () => {};
  const hold = () =>
    new Promise<void>((resolve) => {
      letGo = resolve;
      if (away.signal.aborted) resolve();
      else heard(true);
    });
  void navigator.locks.request(name, { ifAvailable: true }, async (lock) => {
    if (away.signal.aborted) return;
    if (lock) return hold();
    heard(false);
    // Asked for again without waiting for the answer: this call only learnt that it is held.
    navigator.locks.request(name, { signal: away.signal }, hold).catch(() => {});
  });
  return () => {
    away.abort();
    letGo();
  };
};

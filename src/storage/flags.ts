/** Small yes-or-no memories of this browser. One that keeps nothing (private window, storage refused) always answers no. */
export const remembered = (flag: string): boolean => {
  try {
    return localStorage.getItem(`parterre/${flag}`) === 'yes';
  } catch {
    return false;
  }
};

export const remember = (flag: string): void => {
  try {
    localStorage.setItem(`parterre/${flag}`, 'yes');
  } catch {
    // Nothing is lost: the line is shown again next time.
  }
};

/** What this tab alone remembers, so that a reload goes on where it was. */
export const recall = (name: string): string | undefined => {
  try {
    return sessionStorage.getItem(`parterre/${name}`) ?? undefined;
  } catch {
    return undefined;
  }
};

export const note = (name: string, value: string): void => {
  try {
    sessionStorage.setItem(`parterre/${name}`, value);
  } catch {
    // A reload then begins with the room kept last.
  }
};

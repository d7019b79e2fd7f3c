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

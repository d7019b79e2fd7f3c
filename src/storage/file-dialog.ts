/** Asks for one project file; null when the person thinks better of it. Must be called from a click or a key. */
export const askForFile = (): Promise<File | null> =>
  new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,.parterre,application/json';
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null), { once: true });
    input.addEventListener('cancel', () => resolve(null), { once: true });
    input.click();
  });

/** A name that every file system takes: what is not a letter, a digit, a space, a comma or a dash becomes a dash. */
export const fileNameOf = (projectName: string): string => {
  const plain = projectName
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N} ,-]+/gu, '-')
    .replace(/^[ -]+|[ -]+$/g, '')
    .slice(0, 80);
  return `${plain || 'room'}.parterre.json`;
};

/** Hands a text to the browser's own way of saving. */
export const offerDownload = (name: string, text: string, type = 'application/json'): void => {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
};

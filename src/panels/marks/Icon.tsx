const PATHS = {
  undo: 'M6 2 2.5 5.5 6 9M2.8 5.5H10a3.75 3.75 0 0 1 0 7.5H6.5',
  redo: 'm10 2 3.5 3.5L10 9m3.2-3.5H6a3.75 3.75 0 0 0 0 7.5h3.5',
  left: 'M10 3 5 8l5 5',
  right: 'm6 3 5 5-5 5',
  down: 'm3 6 5 5 5-5',
  close: 'm3.5 3.5 9 9m0-9-9 9',
  lamp: 'M5 2h6l2.5 6h-11zM8 8v5.5M5.5 13.5h5',
} as const;

export type IconName = keyof typeof PATHS;

/** A thin line drawing of our own. It never stands alone for something that has no word nearby. */
export const Icon = ({ name }: { name: IconName }) => (
  <svg className="icon" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
    <path d={PATHS[name]} />
  </svg>
);

/** A part of the page that F6 stops at: where it is, and what in it takes the focus. */
interface Region {
  readonly within: string;
  /** Looked for inside; where there is none the first thing that can be focused. */
  readonly entry: string;
}

/** In the order F6 goes; what is not on the page, or pushed away, is passed over. */
const REGIONS = {
  top: { within: ':is(.top, .pocket-top)', entry: 'input:checked' },
  outline: { within: '.outline', entry: '[role="treeitem"][tabindex="0"]' },
  form: { within: '.parameters', entry: '[data-path]:not(.step)' },
  room: { within: '.stage', entry: 'canvas[tabindex="0"]' },
  right: { within: '.column.is-right .column-body', entry: '.column-tabs input:checked' },
  tabs: { within: '.pocket-tabs', entry: '[aria-selected="true"]' },
  findings: { within: '.pocket .findings', entry: 'button' },
  curves: { within: '.rise', entry: 'input:checked' },
  plan: { within: '.seat-side', entry: '.chair[tabindex="0"]' },
  ribbon: { within: '.ribbon', entry: 'input' },
} as const satisfies Readonly<Record<string, Region>>;

export type RegionName = keyof typeof REGIONS;

const NAMES = Object.keys(REGIONS) as RegionName[];

const FOCUSABLE = ':is(a[href], button, input, select, textarea, [tabindex="0"]):not(:disabled)';

const isReached = (element: HTMLElement): boolean =>
  element.closest('[inert]') === null && element.checkVisibility({ visibilityProperty: true });

const firstOf = (selector: string): HTMLElement | undefined =>
  [...document.querySelectorAll<HTMLElement>(selector)].find(isReached);

const entryOf = (name: RegionName): HTMLElement | undefined => {
  const { within, entry } = REGIONS[name];
  return firstOf(`${within} ${entry}`) ?? firstOf(`${within} ${FOCUSABLE}`);
};

const regionOf = (element: Element | null): RegionName | undefined =>
  NAMES.find((name) => element?.closest(REGIONS[name].within));

/** Gives a region the focus; false where it is not there to take it. */
export const focusRegion = (name: RegionName): boolean => {
  const entry = entryOf(name);
  entry?.focus();
  return entry !== undefined;
};

/** The focus to the next region there is, or the one before; round at the end. */
export const focusNextRegion = (by: 1 | -1): void => {
  const here = regionOf(document.activeElement);
  const there = NAMES.filter((name) => name === here || entryOf(name));
  const at = here === undefined ? (by > 0 ? -1 : 0) : there.indexOf(here);
  if (there.length > 0) focusRegion(there[(at + by + there.length) % there.length]);
};

/** The focus to a tab of the right column: from there Tab goes into what it shows. */
export const focusRightColumn = (tab: string): void =>
  firstOf(`${REGIONS.right.within} .column-tabs input[value="${tab}"]`)?.focus();

/** The focus to the search for better places, once the right column shows it. */
export const focusSearch = (): void => {
  requestAnimationFrame(() => firstOf(`${REGIONS.right.within} [data-improves]`)?.focus());
};

/** A place of the focus that outlives the thing that has it: panels that are put away come back as new elements. */
export interface FocusPlace {
  readonly region: RegionName;
  readonly name: string;
}

/** What tells a thing from the others of its region, for as long as the region shows the same. */
const nameOf = (element: HTMLElement): string =>
  [
    element.tagName,
    element.dataset.path ?? element.dataset.key ?? element.dataset.seat,
    element.getAttribute('aria-label'),
    element instanceof HTMLInputElement && element.type === 'radio' ? element.value : '',
    element instanceof HTMLButtonElement ? element.textContent : '',
  ].join('|');

export const focusPlace = (): FocusPlace | null => {
  const element = document.activeElement;
  const region = regionOf(element);
  return region && element instanceof HTMLElement ? { region, name: nameOf(element) } : null;
};

/** Puts the focus back on what it was; false while that is not there. */
export const focusAgain = ({ region, name }: FocusPlace): boolean => {
  const all = [...document.querySelectorAll<HTMLElement>(`${REGIONS[region].within} :is(${FOCUSABLE}, [tabindex])`)];
  const same = all.find((element) => nameOf(element) === name && isReached(element));
  same?.focus();
  return same !== undefined;
};

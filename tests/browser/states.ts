import type { Page } from '@playwright/test';
import type { ItemKind } from '../../src/model/project.ts';
import type { SessionState } from '../../src/state/session.ts';
import { probe, settled } from './support.ts';

/** One thing a person may be looking at: how to get there and how to leave it. */
export interface PageState {
  readonly name: string;
  enter(app: Page): Promise<unknown>;
  leave?(app: Page): Promise<unknown>;
}

const session = (app: Page, part: Partial<SessionState>) =>
  probe(app, ({ view }, given) => view.session.setState(given), part);

/** As at the first visit: overlooking, nothing chosen, nothing risen, nothing drawn. */
const FRESH: Partial<SessionState> = {
  mode: 'overlook',
  selection: null,
  alsoSelected: [],
  rightColumn: 'seat',
  bassSheet: null,
  tool: null,
  planBoard: false,
  gathering: false,
  stageCleared: false,
  notices: [],
};

const openLids = (app: Page) =>
  app.evaluate(() => {
    for (const lid of document.querySelectorAll<HTMLDetailsElement>(
      ':is(.column-scroll, .pocket-scroll) details:not([open], .pocket-outline)',
    ))
      lid.open = true;
  });

const tab = (app: Page, name: string) => app.getByRole('tab', { name, exact: true }).click();

const choosing = (kind: ItemKind, id: string) => (app: Page) => session(app, { selection: { kind, id } });

/** A sheet over the room, by its key or, having none, by its button. */
const sheet = (name: string, open: (app: Page) => Promise<unknown>): PageState => ({
  name,
  async enter(app) {
    await open(app);
    await app.locator('dialog.sheet').waitFor();
  },
  async leave(app) {
    await app.keyboard.press('Escape');
    await app.locator('dialog.sheet').waitFor({ state: 'detached' });
  },
});

/** A menu that hangs from the outline's head. Something has been done and is undone again: history has a line then. */
const menu = (pocket: boolean, name: 'Add' | 'History'): PageState => ({
  name: `${name.toLowerCase()} menu`,
  async enter(app) {
    await probe(app, ({ view }) =>
      view.document.actions.apply('Rename the project', (project) => ({
        ok: true,
        project: { ...project, name: `${project.name}, again` },
      })),
    );
    if (pocket) {
      await tab(app, 'Parameters');
      await app.evaluate(() => document.querySelector('.pocket-outline')?.setAttribute('open', ''));
    }
    await app.locator('.outline').getByRole('button', { name, exact: true }).click();
    await app.locator('.add-menu').waitFor();
  },
  async leave(app) {
    await app.keyboard.press('Escape');
    await app.locator('.add-menu').waitFor({ state: 'detached' });
    // The outline stays open until it is closed: the forms that follow are to be seen.
    await app.evaluate(() => document.querySelector('.pocket-outline')?.removeAttribute('open'));
    await probe(app, ({ view }) => view.document.actions.undo());
  },
});

const form = (pocket: boolean, name: string, kind: ItemKind, id: string): PageState => ({
  name: `form of ${name}`,
  async enter(app) {
    if (pocket) await tab(app, 'Parameters');
    await choosing(kind, id)(app);
  },
});

/** The floor tab of a small screen, or a side of the right column. */
const right = (
  pocket: boolean,
  name: string,
  rightColumn: SessionState['rightColumn'],
  pocketTab: string,
): PageState => ({
  name,
  async enter(app) {
    if (pocket) await tab(app, pocketTab);
    await session(app, { rightColumn });
    await settled(app);
    await openLids(app);
  },
});

const risen = (pocket: boolean, bassSheet: 'curves' | 'decay', table: boolean): PageState => ({
  name: `${bassSheet}${table ? ' as a table' : ''}`,
  async enter(app) {
    if (pocket) await tab(app, 'Floor');
    await session(app, { bassSheet, rightColumn: 'bass' });
    await app.locator('.bass-plots').waitFor();
    if (table) await app.locator('.bass-plots').getByRole('button', { name: 'Table', exact: true }).click();
  },
  async leave(app) {
    await session(app, { bassSheet: null });
  },
});

/** Every panel, tab and mode of the page with the first room open, at a desk or on a small screen. */
export const pageStates = (pocket: boolean): readonly PageState[] => [
  { name: 'overlook', enter: async () => {} },
  { name: 'sit', enter: (app) => session(app, { mode: 'sit' }) },
  right(pocket, 'seat card', 'seat', 'Seat'),
  right(pocket, 'bass', 'bass', 'Floor'),
  ...(pocket ? [] : [right(pocket, 'subwoofers', 'subwoofers', 'Floor')]),
  risen(pocket, 'curves', false),
  risen(pocket, 'curves', true),
  risen(pocket, 'decay', false),
  risen(pocket, 'decay', true),
  right(pocket, 'findings', 'findings', 'Findings'),
  form(pocket, 'a surface', 'surface', 'left'),
  form(pocket, 'a row', 'row', 'back'),
  form(pocket, 'a seat', 'seat', 'front-2'),
  form(pocket, 'a loudspeaker', 'loudspeaker', 'L'),
  form(pocket, 'a subwoofer', 'subwoofer', 'S1'),
  form(pocket, 'the picture', 'picture', 'picture'),
  ...(pocket
    ? []
    : [
        {
          name: 'dials',
          async enter(app: Page) {
            await session(app, { selection: { kind: 'loudspeaker', id: 'L' } });
            await app.locator('.way label', { hasText: 'Dials' }).click();
            await app.locator('.dials').waitFor();
          },
          async leave(app: Page) {
            await app.locator('.way label', { hasText: 'Form' }).click();
          },
        },
      ]),
  ...(pocket
    ? [
        {
          name: 'outline',
          async enter(app: Page) {
            await tab(app, 'Parameters');
            await app.getByText('Choose from the outline').click();
          },
        },
      ]
    : []),
  { name: 'drawing a door', enter: (app) => session(app, { tool: { kind: 'opening', what: 'door' } }) },
  {
    name: 'several chosen',
    enter: (app) =>
      session(app, {
        selection: { kind: 'loudspeaker', id: 'L' },
        alsoSelected: [
          { kind: 'loudspeaker', id: 'R' },
          { kind: 'seat', id: 'front-2' },
        ],
        gathering: true,
      }),
  },
  { name: 'plan board', enter: (app) => session(app, { planBoard: true }) },
  menu(pocket, 'Add'),
  menu(pocket, 'History'),
  sheet('rooms sheet', (app) => app.keyboard.press('r')),
  sheet('keys sheet', (app) => app.keyboard.press('?')),
  sheet('cautions sheet', async (app) => {
    if (pocket) await tab(app, 'Floor');
    await app.getByRole('button', { name: 'Before you build', exact: true }).click();
  }),
  {
    name: 'notices',
    enter: (app) =>
      session(app, {
        notices: [
          {
            id: 9001,
            tone: 'caution',
            title: 'This file could not be read as a room',
            lines: ['The third loudspeaker stands outside the walls.', 'A riser is taller than the room.'],
          },
          { id: 9002, tone: 'plain', title: 'Two rows were put right', lines: [] },
        ],
      }),
  },
  {
    name: 'only shown',
    enter: (app) => probe(app, ({ view }) => view.document.setState({ readOnly: true })),
    leave: (app) => probe(app, ({ view }) => view.document.setState({ readOnly: false })),
  },
  { name: 'cleared stage', enter: (app) => session(app, { stageCleared: true }) },
];

/** What slides in or out has arrived: without a scene nothing else waits for it. */
const arrived = (app: Page) =>
  app.evaluate(async () => {
    const sliding = document.getAnimations().filter((one) => one instanceof CSSTransition);
    await Promise.allSettled(sliding.map(({ finished }) => finished));
  });

/** Goes to a state from a fresh one, calls `look` there, and leaves it. */
export const visit = async (app: Page, state: PageState, look: () => Promise<void>): Promise<void> => {
  await session(app, FRESH);
  await state.enter(app);
  await settled(app);
  await arrived(app);
  await look();
  await state.leave?.(app);
};

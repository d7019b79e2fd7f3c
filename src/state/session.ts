import { createStore } from 'zustand/vanilla';
import type { Vec3 } from '../math/vec3.ts';
import type { ItemRef } from '../model/project.ts';
import type { Beside } from '../proposals/beside.ts';
import { initialSlice, type SliceState } from './slice.ts';

export type ViewMode = 'overlook' | 'sit';
export type LightPreset = 'clean' | 'dim' | 'dark';

export type BassSheet = 'curves' | 'decay';
export type Smoothing = 3 | 6 | 12 | null;

export interface Notice {
  readonly id: number;
  readonly tone: 'plain' | 'caution';
  readonly title: string;
  readonly lines: readonly string[];
  /** What can be done about it, as one button. */
  readonly action?: { readonly word: string; run(): void };
}

/** What a person is doing just now: never saved with the project, never undone. */
export interface SessionState {
  readonly mode: ViewMode;
  readonly seatId: string;
  /** The ribbon's cursor and the bass floor's frequency. */
  readonly frequencyHz: number;
  readonly slice: SliceState;
  readonly overlays: {
    readonly sightlines: boolean;
    readonly cones: boolean;
    readonly people: boolean;
    readonly labels: boolean;
  };
  readonly light: LightPreset;
  readonly selection: ItemRef | null;
  /** What is chosen besides `selection`, in the order it was chosen. */
  readonly alsoSelected: readonly ItemRef[];
  /** What the page's one polite live region says; the count tells the same words said twice apart. */
  /** What the last change did to the findings, shown for a moment. */
  readonly told: string | null;
  readonly announcement: { readonly text: string; readonly count: number };
  readonly hovered: ItemRef | null;
  /** How often the whole room, or the look straight at the picture, has been asked for: the camera goes there then. */
  readonly wholeViews: number;
  /** Whether taps add to what is chosen instead of choosing anew. */
  readonly gathering: boolean;
  /** Whether the halves of a pair move by themselves. */
  readonly pairsReleased: boolean;
  /** What the next press on a surface draws; null for none. `what` is an opening's kind, a finish or an object's kind. */
  readonly tool: { readonly kind: 'opening' | 'patch' | 'object'; readonly what: string } | null;
  /** Whether the bar of what is chosen is put away; it comes back with the next choice. */
  readonly barAway: boolean;
  /** Whether the plan is open for drawing. */
  readonly planBoard: boolean;
  /** Chosen things that stand in one another's room, as sentences. */
  readonly overlaps: readonly string[];
  /** The finding whose cause is lit by "show me". */
  readonly spotlight: { readonly findingId: string; readonly items: readonly ItemRef[] } | null;
  readonly dragging: ItemRef | null;
  /** A point of the bass floor under the pointer: its level, and the value its colour stands for. */
  readonly probe: { readonly atM: Vec3; readonly levelDb: number; readonly value: number } | null;
  readonly rightColumn: 'seat' | 'bass' | 'subwoofers' | 'findings';
  /** Whether the form of what is chosen is in view: what it offers is then offered nowhere else. */
  readonly formShown: boolean;
  /** Whether the choice of subwoofers is looked at: its tables are worked out only then. */
  readonly choosing: boolean;
  /** What rises over the band on request. */
  readonly bassSheet: BassSheet | null;
  /** What is laid over the curves. */
  readonly beside: Beside;
  /** Of the curves, as a part 1/n of an octave; null for raw. */
  readonly smoothing: Smoothing;
  readonly stageCleared: boolean;
  readonly notices: readonly Notice[];
  readonly reducedMotion: boolean;
}

export const initialSession: SessionState = {
  mode: 'overlook',
  seatId: '',
  frequencyHz: 40,
  slice: initialSlice,
  overlays: { sightlines: true, cones: true, people: true, labels: true },
  light: 'dim',
  selection: null,
  alsoSelected: [],
  told: null,
  announcement: { text: '', count: 0 },
  hovered: null,
  wholeViews: 0,
  gathering: false,
  pairsReleased: false,
  tool: null,
  barAway: false,
  planBoard: false,
  overlaps: [],
  spotlight: null,
  dragging: null,
  probe: null,
  rightColumn: 'seat',
  formShown: false,
  choosing: false,
  bassSheet: null,
  beside: 'nothing',
  smoothing: null,
  stageCleared: false,
  notices: [],
  reducedMotion: false,
};

/** Asks for the whole room to be in view, or the picture straight ahead. */
export const wholeView = ({ wholeViews }: SessionState): Partial<SessionState> => ({ wholeViews: wholeViews + 1 });

const leftFor = (next: SessionState, last: SessionState): boolean =>
  next.mode !== last.mode || next.seatId !== last.seatId || next.stageCleared !== last.stageCleared;

/**
 * Whoever chooses one thing anew means that thing alone: what was chosen beside the last one is let go. What “show me”
 * lit goes out when another view or another seat is asked for. A cleared stage is looked at: nothing is drawn on it.
 */
export const createSessionStore = () => {
  const store = createStore<SessionState>()(() => initialSession);
  store.subscribe((next, last) => {
    if (next.selection !== last.selection && next.alsoSelected === last.alsoSelected && next.alsoSelected.length > 0)
      store.setState({ alsoSelected: [] });
    if (next.spotlight && next.spotlight === last.spotlight && leftFor(next, last)) store.setState({ spotlight: null });
    if (next.barAway && last.barAway && (next.selection !== last.selection || next.tool !== last.tool))
      store.setState({ barAway: false });
    if (next.stageCleared && !last.stageCleared && next.tool) store.setState({ tool: null });
  });
  return store;
};
export type SessionStore = ReturnType<typeof createSessionStore>;

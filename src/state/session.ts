import { createStore } from 'zustand/vanilla';
import type { ItemRef } from '../model/project.ts';

export type ViewMode = 'overlook' | 'sit';
export type LightPreset = 'clean' | 'dim' | 'dark';

export interface Notice {
  readonly id: number;
  readonly tone: 'plain' | 'caution';
  readonly title: string;
  readonly lines: readonly string[];
}

/** What a person is doing just now: never saved with the project, never undone. */
export interface SessionState {
  readonly mode: ViewMode;
  readonly seatId: string;
  /** The ribbon's cursor and the bass floor's frequency. */
  readonly frequencyHz: number;
  readonly floor: { readonly shown: boolean; readonly height: 'ear' | 'carpet' };
  readonly overlays: {
    readonly sightlines: boolean;
    readonly cones: boolean;
    readonly people: boolean;
    readonly labels: boolean;
  };
  readonly light: LightPreset;
  readonly selection: ItemRef | null;
  readonly hovered: ItemRef | null;
  /** Whether taps add to what is chosen instead of choosing anew. */
  readonly gathering: boolean;
  /** Whether the halves of a pair move by themselves. */
  readonly pairsReleased: boolean;
  /** What the next press on a surface draws; null for none. `what` is an opening's kind, a finish or an object's kind. */
  readonly tool: { readonly kind: 'opening' | 'patch' | 'object'; readonly what: string } | null;
  /** Whether the plan is open for drawing. */
  readonly planBoard: boolean;
  /** Chosen things that stand in one another's room, as sentences. */
  readonly overlaps: readonly string[];
  /** The finding whose cause is lit by "show me". */
  readonly spotlight: { readonly findingId: string; readonly items: readonly ItemRef[] } | null;
  readonly dragging: ItemRef | null;
  /** Level under the pointer on the bass floor. */
  readonly probe: { readonly xM: number; readonly zM: number; readonly levelDb: number } | null;
  readonly rightColumn: 'seat' | 'findings';
  readonly stageCleared: boolean;
  readonly notices: readonly Notice[];
  readonly reducedMotion: boolean;
}

export const initialSession: SessionState = {
  mode: 'overlook',
  seatId: '',
  frequencyHz: 40,
  floor: { shown: true, height: 'ear' },
  overlays: { sightlines: true, cones: true, people: true, labels: true },
  light: 'dim',
  selection: null,
  hovered: null,
  gathering: false,
  pairsReleased: false,
  tool: null,
  planBoard: false,
  overlaps: [],
  spotlight: null,
  dragging: null,
  probe: null,
  rightColumn: 'seat',
  stageCleared: false,
  notices: [],
  reducedMotion: false,
};

export const createSessionStore = () => createStore<SessionState>()(() => initialSession);
export type SessionStore = ReturnType<typeof createSessionStore>;

import { createContext, useContext } from 'react';
import type { PlanSketch } from '../model/plan-sketch.ts';
import type { RoomLengths } from '../model/presets/empty-room.ts';

export interface RoomCard {
  readonly id: string;
  readonly name: string;
  readonly savedAtMs: number;
  readonly sketch: PlanSketch | null;
}

export interface DemoCard {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  readonly sketch: PlanSketch;
}

/** The rooms this browser keeps, and where new ones come from. A refusal of the browser rejects. */
export interface RoomActions {
  currentId(): string;
  /** The one kept last stands first. */
  list(): Promise<RoomCard[]>;
  demos(): Promise<DemoCard[]>;
  open(id: string): Promise<void>;
  openDemo(id: string): Promise<void>;
  begin(lengths: RoomLengths): Promise<void>;
  /** Goes on with a copy of what is shown. */
  copy(): Promise<void>;
  remove(id: string): Promise<void>;
  /** Brings back the room that was removed last. */
  putBack(): Promise<void>;
}

/** What panels ask of the app because it needs files or storage, which panels never import. */
export interface AppActions {
  openFile(): void;
  saveFile(): void;
  openDropped(file: File): void;
  readonly rooms: RoomActions;
  /** Whether the line that says what to try has not been put away yet. */
  readonly firstVisit: boolean;
  firstVisitSeen(): void;
}

const ActionsContext = createContext<AppActions | null>(null);
export const ActionsProvider = ActionsContext.Provider;

/** Null until the app has wired them: a control without its action is then not shown at all. */
export const useAppActions = (): AppActions | null => useContext(ActionsContext);

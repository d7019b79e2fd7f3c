import type { RoomMode } from '../engines/bass/room-field.ts';
import type { ModeReadout } from './types.ts';

/** The room's modes as the report orders them: along the document's x, z and y. */
export const modeReadouts = (modes: readonly RoomMode[]): ModeReadout[] =>
  modes.map(({ hz, order, decayS }) => ({ hz, order: order && [order[0], order[2], order[1]], decayS }));

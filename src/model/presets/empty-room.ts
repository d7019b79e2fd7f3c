import type { Project } from '../project.ts';
import { projectSchema } from '../schema/project.ts';

export interface RoomLengths {
  readonly widthM: number;
  readonly lengthM: number;
  readonly heightM: number;
}

/** A panel's width against the room's: about two fifths of the wall, and never wider than what is sold. */
const PANEL_SHARE = 0.4;
const WIDEST_PANEL_M = 2.2;
/** Eyes three fifths of the way back: off the middle, where the first mode along the room is silent. */
const EYE_SHARE = 0.6;
const PANEL_CENTRE_M = 1.15;
const ASPECT = 16 / 9;

const toCentimetre = (metres: number): number => Math.round(metres * 100) / 100;

/**
 * A room of three lengths with what every project has to hold: a panel on the front wall and one chair facing it. No
 * loudspeaker, no subwoofer, no door: those are the person's to place. Shares and heights are ours, common practice, no source.
 */
export const emptyRoom = ({ widthM, lengthM, heightM }: RoomLengths): Project => {
  const panelM = toCentimetre(Math.min(WIDEST_PANEL_M, widthM * PANEL_SHARE));
  return projectSchema.parse({
    format: 'parterre/project',
    version: 1,
    name: 'New room',
    room: { plan: { shape: 'rectangle', widthM, lengthM }, ceiling: { shape: 'flat', heightM } },
    picture: {
      kind: 'panel',
      aspect: 1.7778,
      widthM: panelM,
      centreXM: 0,
      bottomM: toCentimetre(Math.max(0.3, PANEL_CENTRE_M - panelM / ASPECT / 2)),
      offFrontWallM: 0.06,
    },
    rows: [
      {
        id: 'front',
        eyeZM: toCentimetre(Math.min(lengthM - 0.7, lengthM * EYE_SHARE)),
        furniture: 'single',
        seats: [{ id: 'front-1', xM: 0 }],
      },
    ],
    referenceSeat: 'front-1',
    loudspeakers: [],
    subwoofers: [],
  });
};

import type { ItemRef } from '../project.ts';
import type { WallName } from '../room/walls.ts';

/** Why a dragged place was taken: words are made in src/words. */
export type SnapReason =
  | {
      readonly kind:
        | 'roomCentre'
        | 'pictureCentre'
        | 'pictureMiddle'
        | 'earHeight'
        | 'eyeHeight'
        | 'floor'
        | 'ceiling'
        | 'wallMiddle'
        | 'straight'
        | 'toPicture'
        | 'square'
        | 'levelBend';
    }
  | { readonly kind: 'mirror' | 'inLine' | 'sameHeight' | 'sameWallDistance' | 'edgeOf'; readonly of: ItemRef }
  | { readonly kind: 'wallStep'; readonly wall: WallName; readonly distanceM: number }
  | { readonly kind: 'sameAngle'; readonly of: ItemRef; readonly angleDeg: number }
  | { readonly kind: 'sameDistance'; readonly of: ItemRef; readonly distanceM: number }
  | { readonly kind: 'quarter'; readonly along: 'width' | 'length' }
  | { readonly kind: 'aimSeat'; readonly seatId: string };

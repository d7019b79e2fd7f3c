import type { SliceWish } from '../analysis/slice/wish.ts';

/** The bass floor as a person has set it. */
export interface SliceState extends SliceWish {
  readonly shown: boolean;
  /** Whether a level has a colour scale to itself, rather than the seats'. */
  readonly ownScale: boolean;
}

export const initialSlice: SliceState = {
  shown: true,
  ownScale: false,
  plane: 'level',
  height: 'ear',
  acrossZM: null,
  alongXM: null,
  span: 'one',
  bandHz: [20, 80],
  as: 'level',
};

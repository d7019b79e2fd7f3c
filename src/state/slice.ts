import type { SliceWish } from '../analysis/slice/wish.ts';

/** The bass floor as a person has set it. */
export interface SliceState extends SliceWish {
  readonly shown: boolean;
}

export const initialSlice: SliceState = {
  shown: true,
  plane: 'level',
  height: 'ear',
  acrossZM: null,
  alongXM: null,
  span: 'one',
  bandHz: [20, 80],
  as: 'level',
};

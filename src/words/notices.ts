import type { Notice } from '../model/notice.ts';

/** What is worth saying about a file that was accepted, as one line. */
export const noticeLine = (notice: Notice): string => {
  switch (notice.kind) {
    case 'unknown-keys': {
      const more = notice.more > 0 ? ` and ${notice.more} more` : '';
      return `Kept and written back, but not used by this version: ${notice.paths.join(', ')}${more}`;
    }
    case 'walls-without-polygon':
      return 'room.surfaces.walls is kept but has no effect: a rectangular plan has front, back, left and right';
  }
};

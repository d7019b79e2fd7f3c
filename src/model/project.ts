import type { picture } from './schema/picture.ts';
import type { projectSchema, TARGET_SETS } from './schema/project.ts';
import type { object, opening, patch, surface } from './schema/room.ts';
import type { row } from './schema/seating.ts';
import type { loudspeaker, subwoofer } from './schema/sources.ts';
import type { z } from './schema/values.ts';

/** A validated project with every default filled in. Treat it as frozen: commands return a new one. */
export type Project = z.output<typeof projectSchema>;
export type Row = z.output<typeof row>;
export type Seat = Row['seats'][number];
export type Loudspeaker = z.output<typeof loudspeaker>;
export type Subwoofer = z.output<typeof subwoofer>;
export type Opening = z.output<typeof opening>;
export type Patch = z.output<typeof patch>;
export type RoomObject = z.output<typeof object>;
export type SurfaceTreatment = z.output<typeof surface>;
export type Picture = z.output<typeof picture>;
export type TargetSet = (typeof TARGET_SETS)[number];
export type { SurfaceName } from './schema/room.ts';

export type ItemKind =
  | 'row'
  | 'seat'
  | 'loudspeaker'
  | 'subwoofer'
  | 'opening'
  | 'patch'
  | 'object'
  | 'picture'
  | 'surface';

/** Names one thing in the document. The picture's id is 'picture', a surface's its name. */
export interface ItemRef {
  readonly kind: ItemKind;
  readonly id: string;
}

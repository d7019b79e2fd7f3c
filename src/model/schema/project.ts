import { picture } from './picture.ts';
import { room } from './room.ts';
import { people, referenceSeat, row } from './seating.ts';
import { bass, loudspeaker, subwoofer } from './sources.ts';
import { label, NAME_LENGTH, NOTES_LENGTH, number, z } from './values.ts';

export const PROJECT_FORMAT = 'parterre/project';
export const PROJECT_VERSION = 1;

export const TARGET_SETS = ['living', 'standard', 'diffuse'] as const;

const edge = number(-1000, 1000).nullable();
const ends = z.tuple([edge, edge]);

/** A rule's own ranges for this project, in the unit of the rule; an open end is null. */
const override = z.looseObject({ range: ends, closeRange: ends.optional() });

/** The project file, version 1. Objects are loose: what this version does not know is carried through unchanged. */
export const projectSchema = z.looseObject({
  format: z.literal(PROJECT_FORMAT),
  version: z.literal(PROJECT_VERSION),
  name: z.string().max(NAME_LENGTH).default('Untitled room'),
  notes: z.string().max(NOTES_LENGTH).default(''),
  display: z.looseObject({ units: z.enum(['metric', 'imperial']).default('metric') }).prefault({}),
  air: z.looseObject({ temperatureC: number(-20, 50).default(20) }).prefault({}),
  listening: z.looseObject({ reReferenceDb: number(-60, 10).default(-10) }).prefault({}),
  targets: z
    .looseObject({ set: z.enum(TARGET_SETS).default('living'), overrides: z.record(label, override).optional() })
    .prefault({}),
  room,
  picture,
  people,
  rows: z.array(row).max(12),
  referenceSeat,
  loudspeakers: z.array(loudspeaker).max(64).default([]),
  subwoofers: z.array(subwoofer).max(16).default([]),
  bass,
});

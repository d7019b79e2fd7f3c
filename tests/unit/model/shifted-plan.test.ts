import { describe, expect, it } from 'vitest';
import { addObject } from '../../../src/model/commands/add-object.ts';
import { addToSurface } from '../../../src/model/commands/add-opening.ts';
import type { Added } from '../../../src/model/commands/add-place.ts';
import { addRow, addSofa } from '../../../src/model/commands/add-seating.ts';
import { addLoudspeaker, addSubwoofer, OFFERED_CHANNELS } from '../../../src/model/commands/add-source.ts';
import { toPolygon } from '../../../src/model/commands/plan.ts';
import { THING_SWITCHES } from '../../../src/model/fields/switches-things.ts';
import type { Handle } from '../../../src/model/handles/handle.ts';
import { handlesFor } from '../../../src/model/handles/handles.ts';
import { pullHandle } from '../../../src/model/handles/pull.ts';
import type { Key } from '../../../src/model/paths.ts';
import attic from '../../../src/model/presets/attic.json' with { type: 'json' };
import corner from '../../../src/model/presets/corner-living.json' with { type: 'json' };
import twoRow from '../../../src/model/presets/two-row.json' with { type: 'json' };
import type { ItemRef, Project } from '../../../src/model/project.ts';
import { roomShape } from '../../../src/model/room/shape.ts';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { acoustics } from '../../../src/panels/parameters/acoustics.ts';
import { handleValue } from '../../../src/words/handles.ts';
import { placeText } from '../../../src/words/places.ts';

/**
 * Where a plan lies on the document's axes is nobody's business: a polygon's front wall is at its least z whatever that is.
 * Every room here is worked on twice, as it is and moved as a whole, and what comes of it must differ by that move alone.
 */

type Point = [number, number, number];

/** The whole document moved over the plan, told field by field, apart from the code under test. */
const moved = (project: Project, byXM: number, byZM: number): Project => {
  const next = structuredClone(project);
  const shift = (point: readonly number[]): Point => [point[0] + byXM, point[1], point[2] + byZM];
  const { plan, ceiling } = next.room;
  if (plan.shape !== 'polygon') throw new Error('only a polygon can lie anywhere');
  plan.cornersM = plan.cornersM.map(([x, z]) => [x + byXM, z + byZM]);
  if (ceiling.shape === 'profile')
    ceiling.pointsM = ceiling.pointsM.map(([at, height]) => [at + (ceiling.across === 'x' ? byXM : byZM), height]);
  for (const one of next.room.objects) [one.minM, one.maxM] = [shift(one.minM), shift(one.maxM)];
  next.picture.centreXM += byXM;
  if (next.picture.projector) next.picture.projector.atM = shift(next.picture.projector.atM);
  for (const row of next.rows) {
    row.eyeZM += byZM;
    for (const seat of row.seats) {
      seat.xM += byXM;
      if (seat.eyeZM !== undefined) seat.eyeZM += byZM;
    }
    if (row.riser) {
      row.riser.fromXM += byXM;
      row.riser.toXM += byXM;
      row.riser.fromZM += byZM;
      row.riser.toZM += byZM;
    }
  }
  for (const one of next.loudspeakers) {
    one.atM = shift(one.atM);
    if (Array.isArray(one.aim)) one.aim = shift(one.aim);
  }
  for (const one of next.subwoofers) one.atM = shift(one.atM);
  return next;
};

/** To a hundredth of a millimetre: sums of decimals leave dust behind. */
const dusted = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value), (_key, each: unknown) =>
    typeof each === 'number' ? Math.round(each * 1e5) / 1e5 + 0 : each,
  );

const polygon = (file: unknown): Project => {
  const edit = toPolygon(projectSchema.parse(file));
  if (!edit.ok) throw new Error('no polygon');
  return edit.project;
};

const everything = (project: Project): ItemRef[] => [
  { kind: 'picture', id: 'picture' },
  ...project.loudspeakers.map(({ id }): ItemRef => ({ kind: 'loudspeaker', id })),
  ...project.subwoofers.map(({ id }): ItemRef => ({ kind: 'subwoofer', id })),
  ...project.rows.map(({ id }): ItemRef => ({ kind: 'row', id })),
  ...project.rows.flatMap(({ seats }) => seats.map(({ id }): ItemRef => ({ kind: 'seat', id }))),
  ...project.room.objects.map(({ id }): ItemRef => ({ kind: 'object', id })),
  ...project.room.openings.map(({ id }): ItemRef => ({ kind: 'opening', id })),
  ...project.room.patches.map(({ id }): ItemRef => ({ kind: 'patch', id })),
  ...['floor', 'ceiling'].map((id): ItemRef => ({ kind: 'surface', id })),
];

const rooms: readonly [string, Project][] = [
  ['two rows with a riser', polygon(twoRow)],
  ['under a roof', polygon(attic)],
  ['an L', polygon(corner)],
];
// Whole centimetres, so that what snaps to them snaps alike; exact in binary, so that nothing is lost.
const [BY_X_M, BY_Z_M] = [0.5, -1.25];

// No round figure: what comes of it lies on no edge of anything's reach.
const BY: Point = [0.1373, 0.1131, -0.1717];

const bare = (project: Project): Project => ({
  ...project,
  loudspeakers: [],
  subwoofers: [],
  rows: project.rows.map(({ riser: _built, ...row }) => row),
});

const unseated = (project: Project): Project => {
  const { referenceSeat: _seat, ...rest } = bare(project);
  return { ...rest, rows: [] };
};

describe.each(rooms)('%s, moved as a whole', (_name, here) => {
  const there = moved(here, BY_X_M, BY_Z_M);
  const movedPoint = ([x, y, z]: readonly number[]) => [x + BY_X_M, y, z + BY_Z_M];

  it('has its front wall elsewhere', () => {
    expect(roomShape(there).minM[2]).toBeCloseTo(roomShape(here).minM[2] + BY_Z_M, 9);
    expect(projectSchema.safeParse(there).success).toBe(true);
  });

  it('has its handles where the things have gone', () => {
    const at = ({ id, atM, axis }: Handle) => ({ id, atM, axis });
    for (const ref of everything(here)) {
      const expected = handlesFor(here, [ref]).map((one) => ({ ...at(one), atM: movedPoint(one.atM) }));
      expect(expected.length, `${ref.kind} ${ref.id}`).toBeGreaterThan(0);
      expect(dusted(handlesFor(there, [ref]).map(at))).toEqual(dusted(expected));
    }
  });

  it.each([0, 0.03])(
    'pulls them alike, with a reach of %s m, for the same reasons and with the same words',
    (reachM) => {
      let changed = 0;
      for (const ref of everything(here))
        for (const [index, handle] of handlesFor(here, [ref]).entries()) {
          const options = { reachM, pairs: true, chosen: [ref] };
          const [a, b] = [
            pullHandle(here, handle, BY, options),
            pullHandle(there, handlesFor(there, [ref])[index], BY, options),
          ];
          expect(b.edit.ok, handle.id).toBe(a.edit.ok);
          expect(dusted(b.reasons), handle.id).toEqual(dusted(a.reasons));
          if (!a.edit.ok || !b.edit.ok) continue;
          if (a.edit.project !== here) changed += 1;
          expect(dusted(b.edit.project), handle.id).toEqual(dusted(moved(a.edit.project, BY_X_M, BY_Z_M)));
          expect(handleValue(b.edit.project, handle), handle.id).toBe(handleValue(a.edit.project, handle));
        }
      expect(changed).toBeGreaterThan(everything(here).length);
    },
  );

  it('turns a chair to the picture where the picture is', () => {
    const seat = here.rows[0].seats[0];
    const ref: ItemRef = { kind: 'seat', id: seat.id };
    const facing = (project: Project, byXM: number, byZM: number) => {
      const handle = handlesFor(project, [ref]).find(({ kind }) => kind === 'facing')!;
      const { picture, rows } = project;
      const [row] = rows;
      const toX = picture.centreXM - row.seats[0].xM;
      const toZ = here.picture.offFrontWallM - here.rows[0].eyeZM;
      const long = Math.hypot(toX, toZ);
      const wanted = [row.seats[0].xM + (toX / long) * 0.8 + byXM, 0, row.eyeZM + (toZ / long) * 0.8 + byZM];
      const by: Point = [wanted[0] - handle.atM[0], 0, wanted[2] - handle.atM[2]];
      return pullHandle(project, handle, by, { reachM: 0.03, pairs: false, chosen: [ref] });
    };
    const { edit, reasons } = facing(there, 0.01, 0.01);
    expect(reasons.map(({ kind }) => kind)).toEqual(['toPicture']);
    const turned = edit.ok ? edit.project.rows[0].seats[0].facingDeg : undefined;
    const [toX, toZ] = [here.picture.centreXM - seat.xM, here.picture.offFrontWallM - here.rows[0].eyeZM];
    expect(turned).toBe(Math.round((Math.atan2(toX, -toZ) * 180) / Math.PI));
  });

  it('adds things at the same places of the room', () => {
    const adds: readonly [string, (project: Project) => Added][] = [
      ...OFFERED_CHANNELS.map((channel): [string, (project: Project) => Added] => [
        channel,
        (project) => addLoudspeaker(bare(project), channel),
      ]),
      ['a centre behind cloth', (project) => addLoudspeaker(bare(cloth(project)), 'M+000')],
      ['a subwoofer', (project) => addSubwoofer(bare(project))],
      ['a sofa', (project) => addSofa(bare(project), 3)],
      ['a row', (project) => addRow(bare(project))],
      ['a first row', (project) => addRow(unseated(project))],
      ...(['box', 'beam', 'column', 'table', 'lamp'] as const).map((kind): [string, (project: Project) => Added] => [
        kind,
        (project) => addObject(bare(project), kind),
      ]),
      ...(['door', 'window', 'panel'] as const).map((kind): [string, (project: Project) => Added] => [
        kind,
        (project) => addToSurface(project, kind, '1'),
      ]),
    ];
    const cloth = (project: Project): Project => ({
      ...project,
      picture: { ...project.picture, acousticallyTransparent: true, offFrontWallM: 0.6 },
    });
    for (const [name, add] of adds) {
      const [a, b] = [add(here).edit, add(there).edit];
      expect(b.ok, name).toBe(a.ok);
      if (a.ok && b.ok) expect(dusted(b.project), name).toEqual(dusted(moved(a.project, BY_X_M, BY_Z_M)));
    }
    const first = addRow(unseated(there)).edit;
    expect(first.ok).toBe(true);
  });

  it('states by its own numbers what was as usual, alike', () => {
    const turns: readonly [string, Key[]][] = [
      ['rows[].riser', ['rows', 0, 'riser']],
      ['picture.projector', ['picture', 'projector']],
      ['loudspeakers[].aim', ['loudspeakers', 0, 'aim']],
    ];
    const { projector: _gone, ...picture } = here.picture;
    const from = { ...here, picture, rows: bare(here).rows };
    for (const [pattern, keys] of turns) {
      const one = THING_SWITCHES.find((each) => each.pattern === pattern)!;
      const way = pattern.endsWith('aim') ? 'point' : 'own';
      const [a, b] = [one.set(from, keys, way, acoustics), one.set(moved(from, BY_X_M, BY_Z_M), keys, way, acoustics)];
      if (!a.ok || !b.ok) throw new Error(`${pattern} is refused`);
      expect(a.project, pattern).not.toBe(from);
      expect(dusted(b.project), pattern).toEqual(dusted(moved(a.project, BY_X_M, BY_Z_M)));
    }
  });

  it('tells the same distances from the front wall', () => {
    const back = moved(here, 0, BY_Z_M);
    for (const ref of everything(here))
      for (const units of ['metric', 'imperial'] as const)
        expect(placeText(back, ref, units)).toBe(placeText(here, ref, units));
  });
});

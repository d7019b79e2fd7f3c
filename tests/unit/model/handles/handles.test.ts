import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../src/math/vec3.ts';
import { raiseCeiling } from '../../../../src/model/commands/ceiling.ts';
import type { Edit } from '../../../../src/model/commands/edit.ts';
import { moveLoudspeaker, moveRow } from '../../../../src/model/commands/move.ts';
import { stretchOnSurface } from '../../../../src/model/commands/on-surface.ts';
import { moveRoomWall } from '../../../../src/model/commands/plan.ts';
import { shiftRow, slideOnSurface } from '../../../../src/model/commands/shift.ts';
import {
  aimLoudspeaker,
  moveRiserEdge,
  raiseRow,
  reclineSeat,
  resizePicture,
  stretchObject,
  turnSeat,
} from '../../../../src/model/commands/stretch.ts';
import type { Handle } from '../../../../src/model/handles/handle.ts';
import { handlesFor } from '../../../../src/model/handles/handles.ts';
import { pullAsFar, pullHandle } from '../../../../src/model/handles/pull.ts';
import type { ItemRef, Project } from '../../../../src/model/project.ts';
import { refusalText } from '../../../../src/words/refusals.ts';
import { stopText } from '../../../../src/words/snap.ts';
import { sampleProject } from '../sample.ts';

const project = sampleProject();

const handleOf = (ref: ItemRef, id: string, from = project): Handle => {
  const found = handlesFor(from, [ref]).find((one) => one.id === `${ref.kind}:${ref.id}/${id}`);
  if (!found) throw new Error(`no handle ${id}: ${handlesFor(from, [ref]).map((one) => one.id)}`);
  return found;
};

const pulled = (ref: ItemRef, id: string, byM: Vec3, pairs = false, from = project): Project => {
  const { edit } = pullHandle(from, handleOf(ref, id, from), byM, { reachM: 0.002, pairs, chosen: [ref] });
  if (!edit.ok) throw new Error(`refused: ${JSON.stringify(edit.reason)}`);
  return edit.project;
};

const made = (edit: Edit): Project => {
  if (!edit.ok) throw new Error(`refused: ${JSON.stringify(edit.reason)}`);
  return edit.project;
};

describe('the handles of a thing', () => {
  it('are enumerable by kind, with the command each calls', () => {
    const kinds = (ref: ItemRef) =>
      handlesFor(project, [ref]).map(({ kind, part }) => (part ? `${kind} ${part}` : kind));
    expect(kinds({ kind: 'loudspeaker', id: 'L' })).toEqual(['place', 'height', 'aim']);
    expect(kinds({ kind: 'subwoofer', id: 'S1' })).toEqual(['place', 'height']);
    expect(kinds({ kind: 'seat', id: 'front-1' })).toEqual(['place', 'facing', 'rowPlace']);
    expect(kinds({ kind: 'seat', id: 'back-1' })).toEqual(['place', 'facing', 'recline']);
    expect(kinds({ kind: 'row', id: 'front' })).toEqual(['rowPlace', 'rowDistance', 'riserHeight']);
    expect(kinds({ kind: 'row', id: 'back' })).toEqual([
      'rowPlace',
      'rowDistance',
      'riserHeight',
      'riserFront fromZM',
      'riserBack toZM',
    ]);
    expect(kinds({ kind: 'opening', id: 'door' })).toEqual(['slide', 'edge left', 'edge right', 'edge top']);
    expect(kinds({ kind: 'opening', id: 'window' })).toHaveLength(5);
    expect(kinds({ kind: 'surface', id: 'floor' })).toEqual(['wall 0', 'wall 1', 'wall 2', 'wall 3']);
    expect(kinds({ kind: 'surface', id: 'ceiling' })).toEqual(['ceiling']);
    expect(kinds({ kind: 'picture', id: 'picture' }).filter((kind) => kind.startsWith('pictureCorner'))).toHaveLength(
      4,
    );
    const all = [...project.loudspeakers.map(({ id }): ItemRef => ({ kind: 'loudspeaker', id }))];
    const ids = all.flatMap((ref) => handlesFor(project, [ref]).map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('are none for what is locked or gone, and two for several things', () => {
    const locked = { ...project, rows: project.rows.map((row) => ({ ...row, locked: true })) };
    expect(handlesFor(locked, [{ kind: 'seat', id: 'front-1' }])).toEqual([]);
    expect(handlesFor(project, [{ kind: 'seat', id: 'nobody' }])).toEqual([]);
    const several: ItemRef[] = [
      { kind: 'loudspeaker', id: 'L' },
      { kind: 'subwoofer', id: 'S1' },
    ];
    expect(handlesFor(project, several).map(({ kind }) => kind)).toEqual(['groupPlace', 'groupHeight']);
    expect(handlesFor(project, [...several, { kind: 'seat', id: 'front-1' }]).map(({ kind }) => kind)).toEqual([
      'groupPlace',
    ]);
  });

  it('of a polygon’s floor are its walls and its corners', () => {
    const cornersM = [
      [-2.15, 0],
      [2.15, 0],
      [2.15, 6.1],
      [-2.15, 6.1],
    ] as [number, number][];
    const polygon: Project = {
      ...project,
      room: { ...project.room, plan: { shape: 'polygon', cornersM }, openings: [], patches: [] },
    };
    const found = handlesFor(polygon, [{ kind: 'surface', id: 'floor' }]);
    expect(found.filter(({ kind }) => kind === 'wall')).toHaveLength(4);
    expect(found.filter(({ kind }) => kind === 'corner')).toHaveLength(4);
    expect(handlesFor(polygon, [{ kind: 'surface', id: '1' }]).map(({ id }) => id)).toEqual(['surface:1/wall:1']);
  });
});

describe('a pull is the command it names', () => {
  const L: ItemRef = { kind: 'loudspeaker', id: 'L' };
  const back: ItemRef = { kind: 'row', id: 'back' };
  const picture: ItemRef = { kind: 'picture', id: 'picture' };
  const riser = project.rows[1].riser!;

  it.each<[string, () => Project, () => Edit]>([
    ['place', () => pulled(L, 'place', [0.13, 0, 0.27]), () => moveLoudspeaker(project, 'L', [-1.23, 1.15, 0.49])],
    ['height', () => pulled(L, 'height', [0, 0.17, 0]), () => moveLoudspeaker(project, 'L', [-1.36, 1.32, 0.22])],
    ['aim', () => pulled(L, 'aim', [0.5, 0, 0.35]), () => aimLoudspeaker(project, 'L', [0.5, 1.11, 3.75])],
    ['rowPlace', () => pulled(back, 'rowPlace', [0.3, 0, -0.13]), () => shiftRow(project, 'back', 0.3, -0.13)],
    ['rowDistance', () => pulled(back, 'rowDistance', [0, 0, -0.13]), () => moveRow(project, 'back', { eyeZM: 4.82 })],
    ['riserHeight', () => pulled(back, 'riserHeight', [0, -0.06, 0]), () => raiseRow(project, 'back', 0.3)],
    [
      'riserFront',
      () => pulled(back, 'riserFront:fromZM', [0, 0, 0.13]),
      () => moveRiserEdge(project, 'back', 'fromZM', 4.08, riser),
    ],
    [
      'facing',
      () => pulled({ kind: 'seat', id: 'front-1' }, 'facing', [0.8, 0, 0.8]),
      () => turnSeat(project, 'front-1', 90),
    ],
    // The head goes back by the sine: 0.69 sin 30 degrees = 0.345.
    [
      'recline',
      () => pulled({ kind: 'seat', id: 'back-1' }, 'recline', [0, 0, 0.345]),
      () => reclineSeat(project, 'back-1', 30),
    ],
    // Along its diagonal, the right upper corner out by 5 cm and up by what keeps the shape.
    [
      'pictureCorner',
      () => pulled(picture, 'pictureCorner:upper right', [0.05, 0.1 / 1.7778, 0]),
      () => resizePicture(project, 2.7, 'bottom'),
    ],
    [
      'slide',
      () => pulled({ kind: 'opening', id: 'window' }, 'slide', [0, 0.1, -0.33]),
      () => slideOnSurface(project, { kind: 'opening', id: 'window' }, -0.33, 0.1),
    ],
    [
      'edge',
      () => pulled({ kind: 'opening', id: 'window' }, 'edge:right', [0, 0, -0.13]),
      () => stretchOnSurface(project, { kind: 'opening', id: 'window' }, 'right', -0.13),
    ],
    [
      'objectSide',
      () => pulled({ kind: 'object', id: 'side-table' }, 'objectSide:y', [0, 0.13, 0]),
      () => stretchObject(project, 'side-table', 1, 'max', 0.63),
    ],
    [
      'ceiling',
      () => pulled({ kind: 'surface', id: 'ceiling' }, 'ceiling', [0, 0.13, 0]),
      () => raiseCeiling(project, 0.13),
    ],
    [
      'wall',
      () => pulled({ kind: 'surface', id: 'left' }, 'wall:3', [-0.3, 0, 0]),
      () => moveRoomWall(project, 'left', 0.3),
    ],
  ])('%s', (_kind, pull, command) => {
    const next = pull();
    expect(next).not.toBe(project);
    expect(next).toEqual(made(command()));
  });

  it('moves the other half of a pair as its mirror image, and leaves it when it is let go or locked', () => {
    const both = pulled(L, 'place', [0.13, 0, 0.27], true);
    const at = (from: Project, id: string) => from.loudspeakers.find((one) => one.id === id)?.atM;
    expect(at(both, 'L')).toEqual([-1.23, 1.15, 0.49]);
    expect(at(both, 'R')).toEqual([1.23, 1.15, 0.49]);
    expect(at(pulled(L, 'place', [0.13, 0, 0.27]), 'R')).toEqual([1.36, 1.15, 0.22]);
    const locked = {
      ...project,
      loudspeakers: project.loudspeakers.map((one) => (one.id === 'R' ? { ...one, locked: true } : one)),
    };
    expect(at(pulled(L, 'place', [0.13, 0, 0.27], true, locked), 'R')).toEqual([1.36, 1.15, 0.22]);
  });

  it('aims back at the reference seat when it comes near its ear', () => {
    const away = pulled(L, 'aim', [0.5, 0, 0.35]);
    const handle = handleOf(L, 'aim', away);
    const { edit, reasons } = pullHandle(away, handle, [-0.49, 0, -0.36], { reachM: 0.03, pairs: false, chosen: [L] });
    expect(made(edit).loudspeakers[0].aim).toBe('reference');
    expect(reasons).toEqual([{ kind: 'aimSeat', seatId: 'front-2' }]);
  });

  it('says nothing of a line that a wall kept it from', () => {
    const { edit, reasons } = pullHandle(project, handleOf(L, 'place'), [-9, 0, 0], {
      reachM: 0.05,
      pairs: false,
      chosen: [L],
    });
    expect(made(edit).loudspeakers[0].atM[0]).toBeCloseTo(-2.15 + 0.12, 6);
    expect(reasons).toEqual([]);
  });
});

describe('the bends of a ceiling', () => {
  const ceiling: ItemRef = { kind: 'surface', id: 'ceiling' };
  // Nothing that a lower ceiling would leave outside.
  const under = (shape: Project['room']['ceiling']): Project => ({
    ...project,
    room: { ...project.room, ceiling: shape, openings: [], patches: [], objects: [] },
    rows: project.rows.slice(0, 1),
    loudspeakers: [],
    subwoofers: [],
  });
  const roof = under({
    shape: 'profile',
    across: 'x',
    pointsM: [
      [-2.15, 1.6],
      [-0.5, 2.7],
      [0.5, 2.7],
      [2.15, 1.6],
    ],
  });
  const pointsOf = ({ room }: Project) => (room.ceiling.shape === 'profile' ? room.ceiling.pointsM : []);

  it('are taken hold of one by one, and moved over the section', () => {
    expect(handlesFor(roof, [ceiling]).map(({ id }) => id)).toEqual([
      'surface:ceiling/ceiling',
      ...[0, 1, 2, 3].map((i) => `surface:ceiling/bend:${i}`),
    ]);
    const next = pulled(ceiling, 'bend:1', [-0.3, 0.2, 0], false, roof);
    expect(pointsOf(next)).toEqual([
      [-2.15, 1.6],
      [-0.8, 2.9],
      [0.5, 2.7],
      [2.15, 1.6],
    ]);
    expect(pulled(ceiling, 'bend:1', [0.3, -0.2, 0], false, next)).toEqual(roof);
  });

  it('stay between their neighbours, whichever side the profile is told from', () => {
    expect(pointsOf(pulled(ceiling, 'bend:1', [4, 0, 0], false, roof))[1]).toEqual([0.45, 2.7]);
    const told = under({ shape: 'profile', across: 'x', pointsM: pointsOf(roof).toReversed() });
    expect(pointsOf(pulled(ceiling, 'bend:1', [4, 0, 0], false, told))[1]).toEqual([2.1, 2.7]);
    expect(pointsOf(pulled(ceiling, 'bend:1', [-4, 0, 0], false, told))[1]).toEqual([-0.45, 2.7]);
  });

  it('stop level with the bend beside them, and say so', () => {
    const low = pulled(ceiling, 'bend:1', [0, 0.3, 0], false, roof);
    const options = { reachM: 0.03, pairs: false, chosen: [ceiling] };
    const { edit, reasons } = pullHandle(low, handleOf(ceiling, 'bend:1', low), [0, -0.28, 0], options);
    expect(made(edit)).toEqual(roof);
    expect(reasons).toEqual([{ kind: 'levelBend' }]);
  });

  it('are the ends of a slope, which go up and down', () => {
    const slope = under({ shape: 'slope', across: 'z', startHeightM: 2.3, endHeightM: 3 });
    const next = pulled(ceiling, 'bend:1', [0, 0.25, 0], false, slope);
    expect(next.room.ceiling).toEqual({ shape: 'slope', across: 'z', startHeightM: 2.3, endHeightM: 3.25 });
    expect(handlesFor(project, [ceiling]).map(({ kind }) => kind)).toEqual(['ceiling']);
  });

  it('go no farther than a room may be high', () => {
    const slope = under({ shape: 'slope', across: 'z', startHeightM: 2.3, endHeightM: 3 });
    expect(pulled(ceiling, 'ceiling', [0, -0.7, 0], false, slope).room.ceiling).toMatchObject({
      startHeightM: 1.8,
      endHeightM: 2.5,
    });
    expect(pulled(ceiling, 'bend:0', [0, 20, 0], false, slope).room.ceiling).toMatchObject({ startHeightM: 10 });
    expect(pointsOf(pulled(ceiling, 'ceiling', [0, 20, 0], false, roof)).map(([, height]) => height)).toEqual([
      8.9, 10, 10, 8.9,
    ]);
  });
});

describe('what is in the way', () => {
  const back: ItemRef = { kind: 'surface', id: 'back' };
  const options = { reachM: 0.03, pairs: false, chosen: [back] };

  it('lets a wall go as far as it may, and is named where the hand is and when it is let go', () => {
    const [wall] = handlesFor(project, [back]);
    const { edit, stopped, reasons } = pullAsFar(project, wall, [0, 0, -3], options);
    const length = made(edit).room.plan;
    // The subwoofers in the back corners keep 5 cm off it: 6.1 m less their gap, to a whole centimetre.
    const gap = 6.1 - Math.max(...project.subwoofers.map(({ atM, sizeM }) => atM[2] + sizeM[2] / 2));
    expect(length).toMatchObject({ lengthM: Math.round((6.1 - Math.floor(gap * 100 + 1e-6) / 100) * 100) / 100 });
    expect(reasons).toEqual([]);
    expect(stopped && stopText(project, stopped)).toMatch(/^subwoofer S\d stands in the way$/);
    expect(stopped && refusalText(stopped, 'metric', project)).toMatch(/^Subwoofer S\d stands in the way\.$/);
    expect(pullAsFar(project, wall, [0, 0, 0.4], options).stopped).toBeUndefined();
  });

  it('is a cabinet under a ceiling that comes down', () => {
    const ceiling: ItemRef = { kind: 'surface', id: 'ceiling' };
    const { edit, stopped } = pullAsFar(project, handleOf(ceiling, 'ceiling'), [0, -2, 0], options);
    const highest = Math.max(...project.loudspeakers.map(({ atM }) => atM[1]));
    expect(made(edit).room.ceiling).toEqual({ shape: 'flat', heightM: highest });
    expect(stopped && stopText(project, stopped)).toMatch(/ is in the way$/);
  });
});

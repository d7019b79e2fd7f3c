import { describe, expect, it } from 'vitest';
import { changed, refusedLines } from './samples.ts';

type Changes = Parameters<typeof changed>[0];

describe('what one field cannot know of the others', () => {
  const cases: [string, Changes, string[]][] = [
    [
      'a loudspeaker twice',
      { 'loudspeakers.3.id': 'L' },
      ['loudspeakers[3].id: holds "L", already used by loudspeakers[0]; allowed: an id of its own'],
    ],
    [
      'a subwoofer called like a loudspeaker',
      { 'subwoofers.0.id': 'C' },
      ['subwoofers[0].id: holds "C", already used by loudspeakers[1]; allowed: an id of its own'],
    ],
    [
      'a seat called like one in another row',
      { 'rows.1.seats.0.id': 'front-1' },
      ['rows[1].seats[0].id: holds "front-1", already used by rows[0].seats[0]; allowed: an id of its own'],
    ],
    [
      'two rows of one name',
      { 'rows.1.id': 'front' },
      ['rows[1].id: holds "front", already used by rows[0]; allowed: an id of its own'],
    ],
    [
      'two openings of one name',
      { 'room.openings.1.id': 'door' },
      ['room.openings[1].id: holds "door", already used by room.openings[0]; allowed: an id of its own'],
    ],
    [
      'a reference seat that is none',
      { referenceSeat: 'balcony' },
      ['referenceSeat: holds "balcony", no seat has this id; allowed: the id of a seat in rows'],
    ],
    ['no seats', { rows: [], referenceSeat: undefined }, ['rows: holds seats in all: 0; allowed: 1 to 64 seats']],
    [
      'an unknown finish',
      { 'room.surfaces.front.finish': 'gold' },
      [
        'room.surfaces.front.finish: holds "gold"; allowed: a finish of the list (plasterboard-on-studs, plaster-on-brick, ...)',
      ],
    ],
    [
      'a wall the plan has not',
      { 'room.surfaces.walls': { '9': {} } },
      ['room.surfaces.walls: holds the key "9"; allowed: whole numbers 0 to 3'],
    ],
    [
      'a loudspeaker behind the wall',
      { 'loudspeakers.0.atM': [-3, 1.15, 0.22] },
      [
        'loudspeakers[0].atM: holds [-3, 1.15, 0.22]; allowed: inside the room, x -2.15 to 2.15, y 0 to 2.7, z 0 to 6.1',
      ],
    ],
    [
      'an ear behind the wall although the eye is inside',
      { 'rows.0.seats.0.eyeZM': 6.05 },
      [
        'rows[0].seats[0]: holds an ear at [-0.72, 1.11, 6.15]; allowed: inside the room, x -2.15 to 2.15, y 0 to 2.7, z 0 to 6.1',
      ],
    ],
    [
      'an object turned inside out',
      { 'room.objects.0.minM': [1.8, 0, 2.95] },
      ['room.objects[0].maxM[0]: holds 1.72; allowed: more than minM[0], which is 1.8 (x)'],
    ],
    [
      'a door that leaves its wall',
      { 'room.openings.0.fromM': 6 },
      [
        'room.openings[0].widthM: holds 0.85, which ends 6.85 along a surface of 6.1; allowed: fromM and widthM together at most 6.1',
      ],
    ],
    [
      'a riser turned inside out',
      { 'rows.1.riser.toXM': -4 },
      ['rows[1].riser.toXM: holds -4; allowed: more than fromXM, which is -2.15'],
    ],
  ];
  it.each(cases)('%s', (_, changes, lines) => {
    expect(refusedLines(changed(changes))).toEqual(lines);
  });

  it('counts seats over all rows', () => {
    const row = (id: string, count: number) => ({
      id,
      eyeZM: 3,
      seats: Array.from({ length: count }, (_, index) => ({ id: `${id}${index}`, xM: 0 })),
    });
    const text = (second: number) => changed({ rows: [row('a', 32), row('b', second)], referenceSeat: 'a0' });
    expect(refusedLines(text(32))).toEqual([]);
    expect(refusedLines(text(33))).toEqual(['rows: holds seats in all: 65; allowed: 1 to 64 seats']);
  });

  it('accepts a source on the wall itself and refuses it a millimetre beyond', () => {
    expect(refusedLines(changed({ 'subwoofers.0.atM': [-2.15, 0, 0] }))).toEqual([]);
    expect(refusedLines(changed({ 'subwoofers.0.atM': [-2.151, 0, 0] }))).toHaveLength(1);
  });

  it('accepts a patch from edge to edge', () => {
    const patch = {
      id: 'p',
      surface: 'back',
      fromM: 0,
      widthM: 4.3,
      bottomM: 0,
      heightM: 2.7,
      finish: 'fibre-panel-50',
    };
    expect(refusedLines(changed({ 'room.patches': [patch] }))).toEqual([]);
    expect(refusedLines(changed({ 'room.patches': [{ ...patch, heightM: 2.71 }] }))).toHaveLength(1);
  });
});

describe('plans and ceilings of every kind', () => {
  const plan = (cornersM: number[][]): Changes => ({ 'room.plan': { shape: 'polygon', cornersM } });
  const ceiling = (pointsM: number[][]): Changes => ({ 'room.ceiling': { shape: 'profile', across: 'x', pointsM } });

  it.each([
    [
      'a rectangle corner by corner',
      [
        [-2.15, 0],
        [2.15, 0],
        [2.15, 6.1],
        [-2.15, 6.1],
      ],
    ],
    [
      'the other turning sense',
      [
        [-2.15, 6.1],
        [2.15, 6.1],
        [2.15, 0],
        [-2.15, 0],
      ],
    ],
    [
      'a cut corner',
      [
        [-2.15, 0],
        [2.15, 0],
        [2.15, 6.1],
        [-1.85, 6.1],
        [-2.15, 5.8],
      ],
    ],
  ])('a good plan is read: %s', (_, corners) => {
    expect(refusedLines(changed(plan(corners)))).toEqual([]);
  });

  it('what stands in the part an L lacks is outside', () => {
    const ell = [
      [-2.15, 0],
      [2.15, 0],
      [2.15, 6.1],
      [0, 6.1],
      [0, 3],
      [-2.15, 3],
    ];
    const lines = refusedLines(changed(plan(ell)));
    expect(lines).toContain(
      'rows[1].seats[0]: holds an ear at [-1.2, 1.47, 5.05]; allowed: a place within the walls of the plan',
    );
    expect(lines.some((line) => line.startsWith('rows[1].seats[2]'))).toBe(false);
  });

  it.each([
    [
      'a bow tie',
      [
        [-2, 0],
        [2, 6],
        [2, 0],
        [-2, 6],
      ],
    ],
    [
      'a corner on another edge',
      [
        [-2, 0],
        [2, 0],
        [2, 6],
        [0, 0],
        [-2, 6],
      ],
    ],
    [
      'a corner twice',
      [
        [-2, 0],
        [2, 0],
        [2, 0],
        [2, 6],
        [-2, 6],
      ],
    ],
    [
      'a spike',
      [
        [-2, 0],
        [2, 0],
        [2, 6],
        [2, 3],
        [2, 6],
        [-2, 6],
      ],
    ],
    [
      'no area',
      [
        [-2, 0],
        [0, 0],
        [2, 0],
      ],
    ],
  ])('a plan that crosses itself is refused as one: %s', (_, corners) => {
    const lines = refusedLines(changed(plan(corners)));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(
      /^room\.plan\.cornersM: holds a list of \d.*; allowed: a plan that does not cross itself$/,
    );
  });

  it('names the two edges that cross', () => {
    const [line] = refusedLines(
      changed(
        plan([
          [-2, 0],
          [2, 6],
          [2, 0],
          [-2, 6],
        ]),
      ),
    );
    expect(line).toContain('edges 0 and 2 cross or touch');
  });

  it('refuses a polygon narrower than a room may be', () => {
    expect(
      refusedLines(
        changed(
          plan([
            [-0.5, 0],
            [0.5, 0],
            [0, 6],
          ]),
        ),
      ),
    ).toEqual(['room.plan.cornersM: holds a width of 1; allowed: 1.5 to 30']);
  });

  it('a good slope and a good profile are read', () => {
    const slope = { shape: 'slope', across: 'z', startHeightM: 2.6, endHeightM: 3.3 };
    expect(refusedLines(changed({ 'room.ceiling': slope }))).toEqual([]);
    const ridge = ceiling([
      [-2.2, 2.6],
      [-0.9, 2.8],
      [0.9, 2.8],
      [2.2, 2.6],
    ]);
    expect(refusedLines(changed(ridge))).toEqual([]);
  });

  it('what hangs above a slope is outside, and a door may not reach past it', () => {
    const low = ceiling([
      [-2.15, 1.3],
      [0, 3],
      [2.15, 1.3],
    ]);
    const lines = refusedLines(changed(low));
    // 0.09 m from a side wall under a slope of 1.7 in 2.15 that begins at 1.3.
    expect(lines).toContain(
      'loudspeakers[3].atM: holds [-2.06, 1.62, 3.95]; allowed: a place below the ceiling, which is 1.371 up there',
    );
    expect(lines).toContain(
      'room.openings[0].heightM: holds 2, which ends 2 along a surface of 1.3; allowed: bottomM and heightM together at most 1.3',
    );
  });

  it('an overhang is refused in words', () => {
    const points = [
      [-2.15, 2.6],
      [1, 2.6],
      [0.5, 3],
      [2.15, 3],
    ];
    expect(refusedLines(changed(ceiling(points)))).toEqual([
      'room.ceiling.pointsM: holds a list of 4; allowed: points that go one way across the room, without overhangs',
    ]);
  });

  it('an opening names a wall of the plan', () => {
    expect(refusedLines(changed({ 'room.openings.0.wall': 7 }))).toEqual([
      'room.openings[0].wall: holds 7; allowed: a wall that the plan has',
    ]);
  });

  it.each([
    [
      'back over itself',
      [
        [-2.2, 1.2],
        [0.9, 2.6],
        [-0.9, 2.6],
        [0.9, 1.5],
        [2.2, 1.2],
      ],
    ],
    [
      'a single height at one place',
      [
        [0, 1.2],
        [0, 2.6],
      ],
    ],
  ])('a profile that crosses itself is refused as one: %s', (_, points) => {
    expect(refusedLines(changed(ceiling(points)))).toEqual([
      `room.ceiling.pointsM: holds ${points.length > 4 ? `a list of ${points.length}` : 'a list of 2'}; allowed: a profile that crosses neither itself nor the floor`,
    ]);
  });

  it('a profile has to reach the height of a room somewhere', () => {
    expect(
      refusedLines(
        changed(
          ceiling([
            [-2, 1.2],
            [0, 1.7],
            [2, 1.2],
          ]),
        ),
      ),
    ).toEqual(['room.ceiling.pointsM: holds a highest point of 1.7; allowed: 1.8 to 10']);
  });
});

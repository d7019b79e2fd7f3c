import { describe, expect, it } from 'vitest';
import { bassNotes } from '../../../src/analysis/bass-notes.ts';
import { roomSpec } from '../../../src/analysis/inputs/room-spec.ts';
import { isPrism } from '../../../src/engines/bass/room-field.ts';
import { measuresIn } from '../../../src/words/measures.ts';
import { plain } from './rooms.ts';

const RECTANGLE = { shape: 'rectangle', widthM: 4, lengthM: 5 };
const roomWith = (plan: unknown, more: Readonly<Record<string, unknown>> = {}) =>
  plain({ room: { plan, ceiling: { shape: 'flat', heightM: 2.5 }, ...more } });
const polygon = (cornersM: readonly (readonly [number, number])[]) => roomWith({ shape: 'polygon', cornersM });
const ell = (side: number) =>
  polygon([
    [-side / 2, 0],
    [side / 2, 0],
    [side / 2, side / 2],
    [0, side / 2],
    [0, side],
    [-side / 2, side],
  ]);

describe('what the bass leaves out', () => {
  it('nothing in a box and in a small L', () => {
    expect(bassNotes(plain({}))).toEqual([]);
    expect(bassNotes(ell(7))).toEqual([]);
  });

  it('the highest frequencies of a large L, the sooner the larger', () => {
    const heard = [14, 28].map((side) => {
      const notes = bassNotes(ell(side));
      expect(notes).toHaveLength(1);
      return Number(/about (\d+) Hz/.exec(notes[0])?.[1]);
    });
    expect(heard[0]).toBeLessThan(200);
    expect(heard[1]).toBeLessThan(0.6 * heard[0]);
  });

  it('the times of modes between walls that take nearly everything, and levels by them in a prism', () => {
    const heavy = { front: { admittance: [0.6, 0] } };
    const corners = [
      [-2, 0],
      [2, 0],
      [2, 3],
      [0, 3],
      [0, 5],
      [-2, 5],
    ];
    const [box] = bassNotes(roomWith(RECTANGLE, { surfaces: heavy }));
    const [prism] = bassNotes(roomWith({ shape: 'polygon', cornersM: corners }, { surfaces: heavy }));
    expect(box).toMatch(/decay times of those are estimates\.$/);
    expect(prism).toContain('a subwoofer in their corner');
    expect(bassNotes(roomWith(RECTANGLE, { surfaces: { front: { admittance: [0.4, 0] } } }))).toEqual([]);
  });

  it('how patches act together on decays, the sooner the larger the room, and nothing where there are none', () => {
    const absorber = [
      { id: 'a', surface: 'front', fromM: 0.5, widthM: 1, bottomM: 0.4, heightM: 1, absorption: { '125': 0.9 } },
    ];
    const said = [7, 12, 26].map((side) => {
      const { room } = ell(side);
      const notes = bassNotes(roomWith(room.plan, { patches: absorber })).join(' ');
      const found = /decay times (?:above about (\d+) Hz|in so large a room)/.exec(notes);
      return found ? Number(found[1] ?? 0) : null;
    });
    expect(said[0]).toBeNull();
    expect(said[1]).toBeGreaterThan(60);
    expect(said[1]).toBeLessThan(200);
    expect(said[2]).toBe(0);
    expect(bassNotes(ell(12)).join()).not.toContain('decay times');
  });

  it('the same in a large box, and nothing in one of a home', () => {
    const absorber = { surface: 'front', fromM: 0.5, widthM: 1, bottomM: 0.4, heightM: 1, absorption: { '125': 0.9 } };
    const notesOf = (side: number, count: number): readonly string[] => {
      const patches = Array.from({ length: count }, (_, i) => ({ ...absorber, id: `a${i}`, fromM: 0.5 + 1.1 * i }));
      return bassNotes(roomWith({ shape: 'rectangle', widthM: side, lengthM: side }, { patches }));
    };
    expect(notesOf(7, 4)).toEqual([]);
    const [note] = notesOf(22, 4);
    const hz = Number(/decay times above about (\d+) Hz/.exec(note)?.[1]);
    expect(hz).toBeGreaterThan(40);
    expect(hz).toBeLessThan(150);
  });

  it('waves along stiff patches that are too large or too stiff to follow', () => {
    const notesOf = (plan: unknown, sideM: number, im: number): string => {
      const patch = { id: 'p', surface: 'ceiling', fromM: 0.3, widthM: sideM, bottomM: 0.3, heightM: sideM };
      return bassNotes(roomWith(plan, { patches: [{ ...patch, admittance: [0.05, im] }] })).join(' ');
    };
    for (const plan of [RECTANGLE, ell(7).room.plan]) {
      expect(notesOf(plan, 3, 0.8)).not.toContain('stiff');
      expect(notesOf(plan, 3, -4)).not.toContain('stiff');
      expect(notesOf(plan, 3, 4)).toContain('too short here');
    }
    const large = notesOf({ shape: 'rectangle', widthM: 12, lengthM: 12 }, 9, 0.8);
    expect(Number(/too short above about (\d+) Hz/.exec(large)?.[1])).toBeGreaterThan(50);
  });

  it('what lies behind an open door', () => {
    const door = { id: 'd', kind: 'door', surface: 'left', fromM: 0.5, widthM: 0.8, bottomM: 0, heightM: 2 };
    const room = (leaf: string) => roomWith(RECTANGLE, { openings: [{ ...door, leaf, opensTo: 'room' }] });
    expect(bassNotes(room('open'))).toEqual([expect.stringContaining('1.6 m²')]);
    expect(bassNotes(room('closed'))).toEqual([]);
  });

  it('in the units a person reads: 1.6 m² is 17.2 square feet, 2.5 m is 8 ft 2 3/8 in (1 in = 25.4 mm)', () => {
    const door = { id: 'd', kind: 'opening', surface: 'left', fromM: 0.5, widthM: 0.8, bottomM: 0, heightM: 2 };
    const cornersM = [
      [-2, 0],
      [2, 0],
      [0, 5],
    ];
    const ceiling = { shape: 'slope', across: 'x', startHeightM: 2, endHeightM: 3 };
    const project = plain({ room: { plan: { shape: 'polygon', cornersM }, ceiling, openings: [door] } });
    const [sloping, opening] = bassNotes(project, measuresIn('imperial'));
    expect(sloping).toContain('level at 8 ft 2 3/8 in,');
    expect(opening).toContain('(17 sq ft)');
    expect(bassNotes(project, measuresIn('metric'))).toEqual(bassNotes(project));
  });
});

describe('corners in the middle of a straight wall', () => {
  it('are none to the bass: the rectangle they belong to is a box', () => {
    const corners: [number, number][] = [
      [-2, 0],
      [0.3, 0],
      [2, 0],
      [2, 2.5],
      [2, 5],
      [-2, 5],
    ];
    const box = roomWith(RECTANGLE);
    expect(roomSpec(polygon(corners))).toEqual(roomSpec(box));
    expect(roomSpec(polygon([...corners].reverse()))).toEqual(roomSpec(box));
  });

  it('stay where the wall changes there', () => {
    const corners = [
      [-2, 0],
      [0.3, 0],
      [2, 0],
      [2, 5],
      [-2, 5],
    ];
    const walls = { '0': { admittance: [0.3, 0] } };
    const spec = roomSpec(roomWith({ shape: 'polygon', cornersM: corners }, { surfaces: { walls } }));
    expect(isPrism(spec) && spec.cornersM).toHaveLength(5);
  });
});

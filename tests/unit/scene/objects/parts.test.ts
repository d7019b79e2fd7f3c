import { describe, expect, it } from 'vitest';
import twoRow from '../../../../src/model/presets/two-row.json';
import { projectSchema } from '../../../../src/model/schema/project.ts';
import { heldCounts } from '../../../../src/scene/gpu/ledger.ts';
import { SurfaceMaterials } from '../../../../src/scene/materials/surface-materials.ts';
import { accentsOf } from '../../../../src/scene/objects/accents.ts';
import { ContactShadows } from '../../../../src/scene/objects/contact-shadows.ts';
import { wallOf } from '../../../../src/scene/objects/cut-faces.ts';
import { GeometryShelf } from '../../../../src/scene/objects/geometry-shelf.ts';
import { Parts } from '../../../../src/scene/objects/parts.ts';
import { roomSolids } from '../../../../src/shapes/index.ts';
import { initialSession } from '../../../../src/state/session.ts';

const project = projectSchema.parse(twoRow);
const moved = {
  ...project,
  rows: project.rows.map((row, index) =>
    index === 1
      ? { ...row, seats: row.seats.map((seat, k) => (k === 0 ? { ...seat, xM: seat.xM - 0.05 } : seat)) }
      : row,
  ),
};

describe('parts of the room', () => {
  it('are uploaded once a shape, moved without rebuilding, and let go to the last one', () => {
    const before = heldCounts();
    const shelf = new GeometryShelf();
    const materials = new SurfaceMaterials();
    const parts = new Parts(shelf, materials, () => {});
    const solids = roomSolids(project);
    expect(parts.sync(solids, wallOf(project))).toHaveLength(solids.length);
    expect(shelf.size).toBe(new Set(solids.map(({ geometry }) => geometry)).size);
    expect(shelf.size).toBeLessThan(solids.length);
    expect(parts.sync(roomSolids(project), wallOf(project))).toHaveLength(0);

    const geometries = new Map([...parts.byKey].map(([key, part]) => [key, part.lit.geometry]));
    const changed = parts.sync(roomSolids(moved), wallOf(moved));
    expect(changed.length).toBeGreaterThan(0);
    for (const { solid } of changed) expect(solid.id).toBe('back-1');
    for (const [key, part] of parts.byKey) expect(part.lit.geometry).toBe(geometries.get(key));

    parts.dispose();
    materials.dispose();
    expect(shelf.size).toBe(0);
    expect(heldCounts()).toEqual(before);
  });

  it('carry the names that picking needs and fade with their own wall', () => {
    const materials = new SurfaceMaterials();
    const parts = new Parts(new GeometryShelf(), materials, () => {});
    parts.sync(roomSolids(project), wallOf(project));
    const walls = new Map<string, string>();
    for (const { mesh, solid, wall } of parts.byKey.values()) {
      expect(mesh.userData).toEqual({ kind: solid.kind, id: solid.id, part: solid.part });
      walls.set(`${solid.kind}:${solid.id}`, wall);
    }
    expect(walls.get('shell:left')).toBe('left');
    expect(walls.get('shell:floor')).toBe('');
    expect(walls.get('opening:door')).toBe('right');
    expect(walls.get('seat:back-1')).toBe('');
    parts.dispose();
    materials.dispose();
  });

  it('hide the person one is, light what is chosen and dim the rest of a spotlight', () => {
    const materials = new SurfaceMaterials();
    const parts = new Parts(new GeometryShelf(), materials, () => {});
    parts.sync(roomSolids(project), wallOf(project));
    const of = (kind: string, id: string) =>
      [...parts.byKey.values()].filter(({ solid }) => solid.kind === kind && solid.id === id);
    const people = { ...initialSession, mode: 'sit' as const, seatId: 'back-1' };
    accentsOf(project, people, parts.byKey.values());
    expect(of('person', 'back-1').every(({ mesh }) => !mesh.visible)).toBe(true);
    expect(of('person', 'back-2').every(({ mesh }) => mesh.visible)).toBe(true);
    accentsOf(
      project,
      {
        ...initialSession,
        overlays: { ...initialSession.overlays, people: false },
        selection: { kind: 'row', id: 'back' },
        spotlight: { findingId: 'f', items: [{ kind: 'loudspeaker', id: 'C' }] },
      },
      parts.byKey.values(),
    );
    expect(of('person', 'back-2').every(({ mesh }) => !mesh.visible)).toBe(true);
    expect(of('seat', 'back-2').every(({ glow }) => glow === 1)).toBe(true);
    expect(of('seat', 'front-1').every(({ glow, dim }) => glow === 0 && dim < 1)).toBe(true);
    expect(of('loudspeaker', 'C').every(({ glow, dim }) => glow > 0 && dim === 1)).toBe(true);
    parts.dispose();
    materials.dispose();
  });
});

describe('contact shadows', () => {
  it('lie under what stands and not under what hangs, and are let go', () => {
    const before = heldCounts();
    const shadows = new ContactShadows();
    shadows.sync(project, roomSolids(project));
    const names = shadows.group.children.map(({ name }) => name);
    expect(names).toContain('contact shadow subwoofer:S1');
    expect(names).toContain('contact shadow seat:front-1');
    expect(names).not.toContain('contact shadow loudspeaker:Ltf');
    shadows.dispose();
    expect(shadows.group.children).toHaveLength(0);
    expect(heldCounts()).toEqual(before);
  });
});

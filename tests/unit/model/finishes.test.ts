import { describe, expect, it } from 'vitest';
import { finishAbsorptions } from '../../../src/engines/acoustics/materials.ts';
import { FINISHES, finishOf } from '../../../src/model/finishes.ts';

describe('finishes', () => {
  it('the document and the acoustics know the same ones', () => {
    expect(FINISHES.map(({ id }) => id).sort()).toEqual(finishAbsorptions.map(({ id }) => id).sort());
    expect(FINISHES.length).toBeGreaterThan(20);
  });

  it('each has an id of its own, a plain name and a colour', () => {
    expect(new Set(FINISHES.map(({ id }) => id)).size).toBe(FINISHES.length);
    for (const { id, name, colour } of FINISHES) {
      expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(name).toMatch(/^[A-Z][a-z0-9, ]+$/);
      expect(colour).toMatch(/^#[0-9a-f]{6}$/);
    }
  });

  it('the finishes the contract names are among them', () => {
    expect(finishOf('plasterboard-on-studs')?.name).toBe('Plasterboard on studs');
    expect(finishOf('fibre-panel-50')).toBeDefined();
    expect(finishOf('constructor')).toBeUndefined();
  });
});

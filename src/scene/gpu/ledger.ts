/** How many graphics objects of ours are alive, by kind. Who makes one says so here, and again when it is let go. */
export type Held = 'geometry' | 'material' | 'texture' | 'target';

const held: Record<Held, number> = { geometry: 0, material: 0, texture: 0, target: 0 };

export const hold = (kind: Held, count = 1): void => {
  held[kind] += count;
};

export const release = (kind: Held, count = 1): void => {
  held[kind] -= count;
};

export const heldCounts = (): Readonly<Record<Held, number>> => ({ ...held });

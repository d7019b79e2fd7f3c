import { describe, expect, it } from 'vitest';
import schema from '../../../../public/project.schema.json' with { type: 'json' };
import type { Field } from '../../../../src/model/fields/field.ts';
import { FIELDS, fieldFor, fieldOf, fieldsUnder, NOT_FIELDS } from '../../../../src/model/fields/registry.ts';

/**
 * The published JSON Schema is the other route to the same limits: it is walked here by its own keywords (JSON Schema
 * 2020-12), not by the code that made the registry.
 */
interface Node {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly items?: Node;
  readonly prefixItems?: readonly Node[];
  readonly additionalProperties?: Node;
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
}

interface Leaf {
  readonly node: Node;
  readonly required: boolean;
}

const leaves = new Map<string, Leaf>();

const walk = (node: Node, path: string, required: boolean): void => {
  const options = node.anyOf ?? node.oneOf;
  if (options) for (const option of options) walk(option, path, required);
  else if (node.properties)
    for (const [key, child] of Object.entries(node.properties))
      walk(child, path === '' ? key : `${path}.${key}`, node.required?.includes(key) ?? false);
  else if (node.prefixItems) node.prefixItems.forEach((item, index) => void walk(item, `${path}[${index}]`, true));
  else if (node.type === 'array' && node.items) walk(node.items, `${path}[]`, true);
  else if (node.type === 'object' && node.additionalProperties) walk(node.additionalProperties, `${path}{}`, true);
  else leaves.set(path, { node, required });
};
walk(schema as unknown as Node, '', true);

const leafOf = (field: Field): Leaf => {
  const leaf = leaves.get(field.pattern);
  if (!leaf) throw new Error(`${field.pattern} is not in the schema`);
  return leaf;
};

describe('the fields registry against the published schema', () => {
  it('saw a schema worth the name', () => {
    expect(leaves.size).toBeGreaterThan(110);
  });

  it.each(FIELDS.map((field) => [field.pattern, field] as const))('%s', (_, field) => {
    const { node, required } = leafOf(field);
    expect(field.optional).toBe(!required);
    switch (field.quantity) {
      case 'choice':
        expect(field.choices).toEqual(node.enum);
        break;
      case 'flag':
        expect(node.type).toBe('boolean');
        break;
      case 'text':
        expect(node.type).toBe('string');
        if (node.maxLength !== undefined) expect(field.max).toBe(node.maxLength);
        break;
      default:
        expect(['number', 'integer']).toContain(node.type);
        expect([field.min, field.max]).toEqual([node.minimum, node.maximum]);
        expect(field.step).toBeGreaterThan(0);
        expect(field.step!).toBeLessThanOrEqual((field.max! - field.min!) / 10);
    }
  });

  it('holds every number of the schema, or the stated exceptions', () => {
    const numbers = [...leaves].filter(
      ([, { node }]) => /^(number|integer)$/.test(node.type ?? '') && node.const === undefined,
    );
    const missing = numbers.map(([path]) => path).filter((path) => !FIELDS.some(({ pattern }) => pattern === path));
    expect(missing.sort()).toEqual(NOT_FIELDS.filter((path) => path !== 'version').sort());
  });

  it('names units in the path: metres, degrees, decibels, hertz, milliseconds', () => {
    const endings: Record<string, RegExp> = {
      length: /(?:M|aim)(\[\d?\])*$/,
      angle: /Deg$/,
      decibel: /Db({})?$/,
      frequency: /Hz$/,
      time: /Ms$/,
      temperature: /C$/,
      power: /Watts$/,
      light: /lumens$/,
    };
    for (const { pattern, quantity } of FIELDS) if (endings[quantity]) expect(pattern).toMatch(endings[quantity]);
  });

  it('has a label and a sentence of help for everyone, one field a pattern', () => {
    expect(new Set(FIELDS.map(({ pattern }) => pattern)).size).toBe(FIELDS.length);
    for (const { label, help } of FIELDS) {
      expect(label).toMatch(/^[A-Z][^.]{1,30}$/);
      expect(help).toMatch(/^[A-Z].{8,200}\.$/);
    }
  });
});

describe('finding a field', () => {
  it('by its path', () => {
    expect(fieldFor('loudspeakers[7].atM[2]')).toBe(fieldOf('loudspeakers[].atM[2]'));
    expect(fieldFor('rows[0].seats[11].xM')?.label).toBe('Across');
    expect(fieldFor('loudspeakers[7].atM[3]')).toBeUndefined();
    expect(fieldFor('loudspeakers[7].atM')).toBeUndefined();
    expect(fieldFor('loudspeakers.atM[2]')).toBeUndefined();
    expect(fieldFor('subwoofers[1].maxOutput.bandsDb["31.5"]')).toBe(fieldOf('subwoofers[].maxOutput.bandsDb{}'));
    expect(fieldFor('room.surfaces.walls["3"].absorption["125"]')).toBe(fieldOf('room.surfaces.walls{}.absorption{}'));
    expect(fieldFor('room.plan.cornersM[5][1]')?.label).toBe('From front');
    expect(fieldFor('loudspeakers[0].aim[1]')).toBe(fieldOf('loudspeakers[].aim[1]'));
  });

  it('all of one thing', () => {
    expect(fieldsUnder('bass').map(({ pattern }) => pattern)).toEqual([
      'bass.crossoverHz',
      'bass.lfeGainDb',
      'bass.lfeLimitHz',
    ]);
    expect(fieldsUnder('room.plan')).toHaveLength(4);
    expect(() => fieldOf('room.plan.depth')).toThrow('room.plan.depth');
  });
});

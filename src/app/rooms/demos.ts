import { readProjectText } from '../../files/project/read.ts';
import { planSketch } from '../../model/plan-sketch.ts';
import type { Project } from '../../model/project.ts';
import type { DemoCard } from '../../panels/actions.ts';

const texts = import.meta.glob<string>('../../model/presets/*.json', { query: '?raw', import: 'default' });

/** The ready-made rooms in the order they are offered, each with what it is good for. All invented. */
const DEMOS: readonly { readonly id: string; readonly says: string }[] = [
  { id: 'one-sofa', says: 'A living room with a panel; its sofa stands where one seat sees half a picture.' },
  { id: 'two-row', says: 'Two rows and a riser, projection, loudspeakers overhead, four subwoofers.' },
  { id: 'cellar', says: 'Long and narrow, and nearly everything in it is slightly wrong.' },
  { id: 'attic', says: 'Under a ridge with knee walls, a projector, two subwoofers.' },
  { id: 'corner-living', says: 'An L-shaped living room with a sofa group and a single subwoofer.' },
];

const load = async (id: string): Promise<Project | null> => {
  const text = texts[`../../model/presets/${id}.json`];
  const read = text && readProjectText(await text());
  return read?.ok ? read.project : null;
};

export const loadDemo = load;

/** The demos as cards; one that this version cannot read is left out. */
export const demoCards = async (): Promise<DemoCard[]> => {
  const cards = await Promise.all(
    DEMOS.map(async ({ id, says }) => {
      const project = await load(id);
      return project && { id, name: project.name, says, sketch: planSketch(project) };
    }),
  );
  return cards.filter((card) => card !== null);
};

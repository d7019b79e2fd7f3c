import { Sheet } from './Sheet.tsx';

const CAUTIONS: readonly (readonly [title: string, text: string])[] = [
  [
    'Loud sound',
    'Loud sound harms hearing by level and by time together. Start test tones and sweeps quietly and keep them short. Bass goes through party walls, most of all at night.',
  ],
  [
    'Overhead and on the wall',
    'Whatever hangs over people needs fixings made for the load and a second, separate one. Brackets carry the weight times the reach. Tall things are tied back where there are children. Heat rises over a fireplace.',
  ],
  [
    'Before cutting',
    'Old boards and textured ceilings may hold asbestos. Find pipes and cables first. Joists and studs are not cut. What goes through a fire-rated ceiling or a party wall is sealed again.',
  ],
  [
    'Steps and ways out',
    'Keep step heights even and 2.03 m of headroom on a riser. A riser under a window lowers its sill: guard it and use safety glass. Ways out stay clear with every chair reclined, an escape window is never blacked out, step edges are lit.',
  ],
  ['Mains and heat', 'Mains work is for licensed electricians. Racks and projector boxes need cooling.'],
  ['Air and alarms', 'A sealed room needs fresh air, and smoke alarms must be heard in it over the film.'],
  ['Light', 'A projector’s beam at head height dazzles. Flicker and quick flashes harm some people.'],
];

/** What must be thought of before anything is bought, hung or cut. */
export const CautionsSheet = ({ onClose }: { onClose(): void }) => (
  <Sheet title="Before you build" onClose={onClose}>
    <p>
      These are predictions from a simple model of a sealed room, not measurements. Local codes and licensed practice
      govern.
    </p>
    <div className="sheet-columns">
      {CAUTIONS.map(([title, text]) => (
        <section key={title}>
          <h3>{title}</h3>
          <p>{text}</p>
        </section>
      ))}
    </div>
  </Sheet>
);

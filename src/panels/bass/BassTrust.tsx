import { useDocument, useResults } from '../../state/view.tsx';
import { HIGHEST_HZ, LOWEST_HZ } from '../ribbon/levels.ts';

/** Where the forecast stops being trustworthy, in words: what hatching, dashes, rings and band stand for. */
export const BassTrust = () => {
  const firstHz = useResults((state) => state.modes?.value[0]?.hz ?? 0);
  const schroederHz = useResults((state) => state.geometry?.value.room.schroederHz ?? HIGHEST_HZ);
  const silent = useDocument((state) => state.project.subwoofers.length === 0);
  if (silent) return null;
  return (
    <aside className="bass-notes" aria-label="How far to trust it">
      <h3>How far to trust it</h3>
      {firstHz > LOWEST_HZ && (
        <p className="plot-note">
          Hatched, below {Math.round(firstHz)} Hz: the room has no mode there and is taken as sealed. Doors and stud
          walls leak, so expect less.
        </p>
      )}
      {schroederHz < HIGHEST_HZ && (
        <p className="plot-note">
          Past the dashed line, above {Math.round(schroederHz)} Hz: modes lie too close to be told apart. Only a
          tendency.
        </p>
      )}
      <p className="plot-note">
        Inside the dashed rings on the bass floor, nearer to a subwoofer than its own size: rough, since a cabinet is no
        point.
      </p>
      <p className="plot-note">
        The band about the curve: published figures for one and the same wall differ threefold at low frequency.
      </p>
    </aside>
  );
};

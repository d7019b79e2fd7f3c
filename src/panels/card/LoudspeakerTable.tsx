import type { LoudspeakerReadout } from '../../analysis/types.ts';
import { useSession } from '../../state/view.tsx';
import { decibels, degrees, length, milliseconds, type Shown, share } from '../figures.ts';
import { useChoose, useUnits } from '../hooks.ts';
import { Figure } from '../marks/Figure.tsx';

const COLUMNS = ['name', 'across', 'up', 'far', 'arrives', 'level', 'seen'] as const;

const compact = (shown: Shown): Shown => ({ ...shown, text: shown.text.replace(' ft', '′').replace(' in', '″') });

/** Every loudspeaker from the chosen seat's ears: azimuth to the right of straight ahead, distance, level, share seen. */
export const LoudspeakerTable = ({ loudspeakers }: { loudspeakers: readonly LoudspeakerReadout[] }) => {
  const units = useUnits();
  const selection = useSession((state) => state.selection);
  const choose = useChoose();
  if (loudspeakers.length === 0) return <p className="waiting">No loudspeakers in this room.</p>;
  return (
    <>
      <p className="fact-note">
        Across: degrees to the right of straight ahead, minus to the left. Level: direct sound against 1 m from the same
        loudspeaker.
      </p>
      <table className={`speakers is-${units}`}>
        <colgroup>
          {COLUMNS.map((name) => (
            <col key={name} className={`col-${name}`} />
          ))}
        </colgroup>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Loudspeaker</span>
            </th>
            <th scope="col">
              Across <small>°</small>
            </th>
            <th scope="col">
              Up <small>°</small>
            </th>
            <th scope="col">
              Far <small>{units === 'metric' ? 'm' : 'ft'}</small>
            </th>
            <th scope="col">
              After <small>ms</small>
            </th>
            <th scope="col">
              Level <small>dB</small>
            </th>
            <th scope="col">
              Seen <small>%</small>
            </th>
          </tr>
        </thead>
        <tbody>
          {loudspeakers.map((one) => {
            const at = (name: string) => `loudspeakers.${one.id}.${name}`;
            const chosen = selection?.kind === 'loudspeaker' && selection.id === one.id;
            return (
              <tr key={one.id} className={chosen ? 'is-chosen' : undefined}>
                <th scope="row">
                  <button type="button" onClick={() => choose.item({ kind: 'loudspeaker', id: one.id })}>
                    {one.id}
                  </button>
                </th>
                <td>
                  <Figure unit={false} field={at('azimuthDeg')} shown={degrees(one.azimuthDeg)} />
                </td>
                <td>
                  <Figure unit={false} field={at('elevationDeg')} shown={degrees(one.elevationDeg)} />
                </td>
                <td>
                  <Figure unit={false} field={at('distanceM')} shown={compact(length(one.distanceM, units))} />
                </td>
                <td>
                  <Figure unit={false} field={at('arrivalMs')} shown={milliseconds(one.arrivalMs)} />
                </td>
                <td>
                  <Figure unit={false} field={at('levelDb')} shown={decibels(one.levelDb)} />
                </td>
                <td>
                  <Figure unit={false} field={at('visibleFraction')} shown={share(one.visibleFraction)} />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
};

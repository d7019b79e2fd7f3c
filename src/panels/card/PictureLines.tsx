import type { PictureReadout } from '../../analysis/types.ts';
import { count, degrees, length, millimetres, share } from '../figures.ts';
import { useUnits } from '../hooks.ts';
import { Figure } from '../marks/Figure.tsx';
import { Fact } from './Fact.tsx';

/** What the chosen seat sees of the picture. */
export const PictureLines = ({ picture, seatIndex }: { picture: PictureReadout; seatIndex: number }) => {
  const units = useUnits();
  const at = (name: string) => `seats[${seatIndex}].picture.${name}`;
  return (
    <dl className="facts">
      <Fact word="Width of view">
        <Figure field={at('horizontalDeg')} shown={degrees(picture.horizontalDeg)} />
      </Fact>
      <Fact word="Height of view">
        <Figure field={at('verticalDeg')} shown={degrees(picture.verticalDeg)} />
      </Fact>
      <Fact word="Distance to its centre">
        <Figure field={at('distanceM')} shown={length(picture.distanceM, units)} />
      </Fact>
      <Fact word="in picture heights">
        <Figure field={at('distanceHeights')} shown={count(picture.distanceHeights, 2, '×')} />
      </Fact>
      <Fact word="Off its axis">
        <Figure field={at('offAxisDeg')} shown={degrees(picture.offAxisDeg)} />
      </Fact>
      <Fact word="Eyes up to centre, to top edge">
        <Figure field={at('centreElevationDeg')} shown={degrees(picture.centreElevationDeg)} />
        <span className="to">, </span>
        <Figure field={at('topElevationDeg')} shown={degrees(picture.topElevationDeg)} />
      </Fact>
      <Fact word="Pixels a degree">
        <Figure field={at('pixelsPerDegree')} shown={count(picture.pixelsPerDegree, 0, '')} />
      </Fact>
      <Fact word="Share seen">
        <Figure field={at('visibleFraction')} shown={share(picture.visibleFraction)} />
      </Fact>
      {picture.clearanceMm !== null && (
        <Fact word="Line over the eyes in front">
          <Figure field={at('clearanceMm')} shown={millimetres(picture.clearanceMm, units)} />
        </Fact>
      )}
      <Fact word="Short behind tall: share seen">
        <Figure field={at('worstCase.visibleFraction')} shown={share(picture.worstCase.visibleFraction)} />
      </Fact>
      {picture.worstCase.clearanceMm !== null && (
        <Fact word="Short behind tall: line">
          <Figure field={at('worstCase.clearanceMm')} shown={millimetres(picture.worstCase.clearanceMm, units)} />
        </Fact>
      )}
    </dl>
  );
};

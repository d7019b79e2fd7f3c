import { bassCurvesOf, type LevelsAtSeats } from '../analysis/curves.ts';
import type { BassCurves } from '../analysis/types.ts';
import { equaliserDb } from '../engines/bass/equaliser-fit.ts';
import type { PeakFilter } from '../engines/bass/filters.ts';
import type { AlternativeLine } from './alternatives.ts';
import { CHAIN_FREQUENCIES_HZ, type ChainReadout, type CrossoverReadout, type SeatThrough } from './chain.ts';

/**
 * What is laid over the seats' curves: the filters in use or those proposed, the centre through the crossover as it is or
 * with its dip filled, or a kept alternative by its id.
 */
export type Beside = 'nothing' | 'filters' | 'proposed' | 'centre' | 'filled' | `kept:${string}`;

export const keptId = (beside: Beside): string | null => (beside.startsWith('kept:') ? beside.slice(5) : null);

export interface BesideSources {
  /** The seats' own curves. */
  readonly curves: BassCurves;
  /** The filters in use. */
  readonly stored: readonly PeakFilter[];
  readonly chain: ChainReadout | null;
  readonly compared: readonly AlternativeLine[] | null;
}

/** Filters common to all subwoofers change every seat's level alike. */
const filtered = ({ frequenciesHz, seats, fine }: BassCurves, filters: readonly PeakFilter[]): BassCurves => {
  const gainDb = frequenciesHz.map((hz) => equaliserDb(filters, hz));
  const changed = seats.map(({ id, levelDb }) => ({ id, levelDb: levelDb.map((db, f) => db + gainDb[f]) }));
  return { ...bassCurvesOf(frequenciesHz, changed), fine };
};

const onChainGrid = (seats: readonly LevelsAtSeats[]): BassCurves => bassCurvesOf(CHAIN_FREQUENCIES_HZ, seats);

/** Centre and subwoofers together where the subwoofers alone stand: without the trim that brought them to the centre's level. */
const through = (crossover: CrossoverReadout, pick: (seat: SeatThrough) => Float64Array): BassCurves =>
  onChainGrid(crossover.seats.map((seat) => ({ id: seat.id, levelDb: pick(seat).map((db) => db - crossover.trimDb) })));

/** Curves to be laid over those of the room as it is; null where there are none, or not yet. */
export const besideCurves = (beside: Beside, { curves, stored, chain, compared }: BesideSources): BassCurves | null => {
  const crossover = chain?.crossover;
  switch (beside) {
    case 'nothing':
      return null;
    case 'filters':
      return stored.length > 0 ? filtered(curves, stored) : null;
    case 'proposed':
      return chain?.equaliser ? filtered(curves, chain.equaliser.fit.filters) : null;
    case 'centre':
      return crossover ? through(crossover, ({ beforeDb }) => beforeDb) : null;
    case 'filled':
      return crossover ? through(crossover, ({ afterDb }) => afterDb) : null;
    default: {
      const line = compared?.find(({ id }) => id === keptId(beside));
      return line && line.seats.length > 0 ? onChainGrid(line.seats) : null;
    }
  }
};

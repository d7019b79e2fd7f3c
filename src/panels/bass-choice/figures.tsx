import type { FiguresBand } from '../../proposals/subwoofers/proposal.ts';
import { fixed, NO_NUMBER } from '../../words/quantities-length.ts';

export const dB = (value: number | null): string => (value === null ? NO_NUMBER : fixed(value, 1));

type FigureKey = keyof FiguresBand['nominal'];

/** Least and greatest of a figure over the three solves, as "3.9 to 4.6"; nothing where there is none. */
export const bandText = (figures: FiguresBand, key: FigureKey = 'spreadDb'): string => {
  const values = [figures.low, figures.nominal, figures.high].flatMap((solve) => solve[key] ?? []);
  if (values.length < 3) return '';
  // Where it is broken, the second number goes to the next line.
  return `${fixed(Math.min(...values), 1)}\u00a0to ${fixed(Math.max(...values), 1)}`;
};

interface FigureRowProps {
  readonly figures: FiguresBand;
  readonly before?: FiguresBand | null;
}

/** The figures of one arrangement as a list, each with what it was before. */
export const FigureList = ({ figures, before }: FigureRowProps) => {
  const { nominal } = figures;
  const lines = [
    {
      word: 'Seats differ by',
      value: nominal.spreadDb,
      was: before?.nominal.spreadDb ?? null,
      band: bandText(figures),
    },
    { word: 'Uneven over frequency', value: nominal.flatnessDb, was: before?.nominal.flatnessDb ?? null, band: '' },
    { word: 'Level', value: nominal.levelDb, was: before?.nominal.levelDb ?? null, band: '' },
    { word: 'Level, each', value: nominal.perSubwooferDb, was: before?.nominal.perSubwooferDb ?? null, band: '' },
  ];
  return (
    <dl className="choice-figures">
      {lines.map(({ word, value, was, band }) => (
        <div className="fact" key={word}>
          <dt>
            {word}
            {band !== '' && <small> {band}</small>}
          </dt>
          <dd>
            {was !== null && <span className="was">{dB(was)} → </span>}
            <span className="figure">
              <b>{dB(value)}</b>
              <small>dB</small>
            </span>
          </dd>
        </div>
      ))}
    </dl>
  );
};

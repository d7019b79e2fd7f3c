import { useId } from 'react';
import { roomShape } from '../../model/room/shape.ts';
import type { SliceState } from '../../state/slice.ts';
import { useDocument, useResults, useSession, useView } from '../../state/view.tsx';
import { hertz, length } from '../figures.ts';
import { useUnits } from '../hooks.ts';
import { Choice, type Option } from '../top/Choice.tsx';

const PLANES: readonly Option<SliceState['plane']>[] = [
  { value: 'level', word: 'Lying', key: 'x' },
  { value: 'across', word: 'Across', key: 'x' },
  { value: 'along', word: 'Along', key: 'x' },
];
const KINDS: readonly Option<SliceState['as']>[] = [
  { value: 'level', word: 'Level', key: 'v' },
  { value: 'pressure', word: 'Pressure', key: 'v' },
  { value: 'difference', word: 'Difference', key: 'v' },
];
const SCALES: readonly Option<'seats' | 'own'>[] = [
  { value: 'seats', word: 'Colours of the seats' },
  { value: 'own', word: 'Its own colours' },
];
const BANDS = ['20-80', '20-120', '40-120'] as const;
type Span = 'one' | (typeof BANDS)[number];

const bandOf = (span: (typeof BANDS)[number]): readonly [number, number] => {
  const [low, high] = span.split('-').map(Number);
  return [low, high];
};

const STEP_M = 0.05;

/** Where the slice lies along its normal, as a slider; through the chosen seat while it has no place of its own. */
const Place = ({ slice, change }: { slice: SliceState; change(part: Partial<SliceState>): void }) => {
  const project = useDocument((state) => state.project);
  const cut = useResults((state) => state.slice?.value.cut);
  const units = useUnits();
  const { minM, maxM } = roomShape(project);
  const axis = slice.plane === 'level' ? 1 : slice.plane === 'across' ? 2 : 0;
  const own = slice.plane === 'level' ? slice.height : slice.plane === 'across' ? slice.acrossZM : slice.alongXM;
  const atM = typeof own === 'number' ? own : (cut?.atM ?? 0);
  const shown = length(atM, units);
  const put = (place: number | null): Partial<SliceState> => {
    if (slice.plane === 'level') return { height: place ?? 'ear' };
    return slice.plane === 'across' ? { acrossZM: place } : { alongXM: place };
  };
  const word = slice.plane === 'level' ? 'Height' : slice.plane === 'across' ? 'From the front' : 'From the middle';
  return (
    <div className="slide">
      <label>
        <span>{word}</span>
        <input
          type="range"
          min={Math.ceil(minM[axis] / STEP_M) * STEP_M}
          max={maxM[axis]}
          step={STEP_M}
          value={atM}
          aria-valuetext={`${shown.text} ${shown.unit}`.trim()}
          onChange={(event) => change(put(Number(event.target.value)))}
        />
        <output>
          <b>{shown.text}</b> <small>{shown.unit}</small>
        </output>
      </label>
      <p>
        <button
          type="button"
          className="word-button"
          aria-pressed={own === null || own === 'ear'}
          onClick={() => change(put(null))}
        >
          at the seat’s ears
        </button>
        {slice.plane === 'level' && (
          <button
            type="button"
            className="word-button"
            aria-pressed={own === 'carpet'}
            onClick={() => change({ height: 'carpet' })}
          >
            on the carpet
          </button>
        )}
      </p>
    </div>
  );
};

/** Everything about the slice: how and where it lies, over which frequencies, and what its colours say. */
export const SliceControls = () => {
  const { session } = useView();
  const slice = useSession((state) => state.slice);
  const frequencyHz = useSession((state) => state.frequencyHz);
  const heading = useId();
  const change = (part: Partial<SliceState>) =>
    session.setState((state) => ({ slice: { ...state.slice, shown: true, ...part } }));
  const span: Span =
    slice.span === 'one' ? 'one' : (BANDS.find((band) => bandOf(band).join() === slice.bandHz.join()) ?? '20-80');
  const spans: readonly Option<Span>[] = [
    { value: 'one', word: `${hertz(frequencyHz).text} Hz`, key: 'm' },
    ...BANDS.map((value) => ({ value, word: value.replace('-', ' to '), key: 'm' })),
  ];
  const chooseSpan = (next: Span) =>
    change(
      next === 'one'
        ? { span: 'one' }
        : { span: 'band', bandHz: bandOf(next), as: slice.as === 'pressure' ? 'level' : slice.as },
    );
  const chooseKind = (as: SliceState['as']) => change(as === 'pressure' ? { as, span: 'one' } : { as });
  return (
    <section className="slice-controls" aria-labelledby={heading}>
      <h3 id={heading}>The bass floor</h3>
      <Choice quiet label="What its colours say" options={KINDS} value={slice.as} onChoose={chooseKind} />
      {slice.as === 'level' && (
        <Choice
          quiet
          label="Its colour scale"
          options={SCALES}
          value={slice.ownScale ? 'own' : 'seats'}
          onChoose={(scale) => change({ ownScale: scale === 'own' })}
        />
      )}
      <Choice quiet label="Frequencies" options={spans} value={span} onChoose={chooseSpan} />
      <Choice quiet label="How it lies" options={PLANES} value={slice.plane} onChoose={(plane) => change({ plane })} />
      <Place slice={slice} change={change} />
    </section>
  );
};

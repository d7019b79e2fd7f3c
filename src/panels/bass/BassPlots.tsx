import { useRef, useState } from 'react';
import type { BassSheet, Smoothing } from '../../state/session.ts';
import { useDocument, useSession, useView } from '../../state/view.tsx';
import { Icon } from '../marks/Icon.tsx';
import { useSize } from '../ribbon/useSize.ts';
import { Choice, type Option } from '../top/Choice.tsx';
import { BesideChoice } from './BesideChoice.tsx';
import { CurveReading, Curves } from './Curves.tsx';
import { CurvesTable } from './CurvesTable.tsx';
import { Decay, DecayLegend, DecayReading } from './Decay.tsx';
import { DecayTable } from './DecayTable.tsx';
import './bass.css';

const SHEETS: readonly Option<BassSheet>[] = [
  { value: 'curves', word: 'Curves', key: 'k' },
  { value: 'decay', word: 'Decay', key: 'd' },
];

type SmoothingWord = 'raw' | '12' | '6' | '3';
const SMOOTHINGS: readonly Option<SmoothingWord>[] = [
  { value: 'raw', word: 'Raw' },
  { value: '12', word: '1/12' },
  { value: '6', word: '1/6' },
  { value: '3', word: '1/3 octave' },
];

const SmoothingChoice = () => {
  const { session } = useView();
  const smoothing = useSession((state) => state.smoothing);
  const choose = (word: SmoothingWord) =>
    session.setState({ smoothing: word === 'raw' ? null : (Number(word) as Smoothing) });
  return (
    <Choice
      quiet
      label="Smoothing of the curves"
      options={SMOOTHINGS}
      value={smoothing === null ? 'raw' : (String(smoothing) as SmoothingWord)}
      onChoose={choose}
    />
  );
};

/** Curves or decay with what belongs to them: reading, smoothing or legend, and the table behind. */
export const BassPlots = ({ shown, onClose }: { readonly shown: BassSheet; onClose?(): void }) => {
  const { session } = useView();
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box);
  const [table, setTable] = useState(false);
  const silent = useDocument((state) => state.project.subwoofers.length === 0);
  return (
    <div className="bass-plots">
      <header>
        <Choice
          label="What is drawn of the bass"
          options={SHEETS}
          value={shown}
          onChoose={(bassSheet) => session.setState({ bassSheet })}
        />
        <div className="bass-reading">
          {!silent && (shown === 'curves' ? <CurveReading /> : <DecayReading />)}
          {!silent && shown === 'curves' && <BesideChoice />}
        </div>
        <span className="bass-gap" />
        {shown === 'curves' ? <SmoothingChoice /> : <DecayLegend />}
        <button type="button" className="word-button" aria-pressed={table} onClick={() => setTable(!table)}>
          Table
        </button>
        {onClose && (
          <button type="button" className="icon-button" aria-label="Put the curves away" onClick={onClose}>
            <Icon name="close" />
          </button>
        )}
      </header>
      <div className="bass-plot" ref={box}>
        {silent && <p className="waiting">No subwoofer yet: curves and decay are drawn once there is one.</p>}
        {!silent && table && (shown === 'curves' ? <CurvesTable /> : <DecayTable />)}
        {size && !silent && !table && shown === 'curves' && <Curves width={size.width} height={size.height} />}
        {size && !silent && !table && shown === 'decay' && <Decay width={size.width} height={size.height} />}
      </div>
    </div>
  );
};

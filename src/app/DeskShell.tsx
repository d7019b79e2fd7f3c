import { type ReactNode, useRef, useState } from 'react';
import { BassColumn } from '../panels/bass/BassColumn.tsx';
import { BassPlots } from '../panels/bass/BassPlots.tsx';
import { SliceLegend } from '../panels/bass/SliceLegend.tsx';
import { SubwooferChoice } from '../panels/bass-choice/SubwooferChoice.tsx';
import { SeatCard } from '../panels/card/SeatCard.tsx';
import { Findings } from '../panels/findings/Findings.tsx';
import { useMedia } from '../panels/hooks.ts';
import { Icon } from '../panels/marks/Icon.tsx';
import { FirstVisit } from '../panels/notices/FirstVisit.tsx';
import { Notices } from '../panels/notices/Notices.tsx';
import { OnlyShown } from '../panels/notices/OnlyShown.tsx';
import { Told } from '../panels/notices/Told.tsx';
import { Outline } from '../panels/outline/Outline.tsx';
import { Parameters } from '../panels/parameters/Parameters.tsx';
import { Ribbon } from '../panels/ribbon/Ribbon.tsx';
import { useSize } from '../panels/ribbon/useSize.ts';
import { PictureSeen } from '../panels/seats/PictureSeen.tsx';
import { SeatPlan } from '../panels/seats/SeatPlan.tsx';
import { Choice } from '../panels/top/Choice.tsx';
import { type SheetName, TopLine } from '../panels/top/TopLine.tsx';
import { useSession, useView } from '../state/view.tsx';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { useFormShown } from './useFormShown.ts';
import { useStageInsets } from './useStageInsets.ts';

const LEFT = 300;
const RIGHT = 320;
const TOP = 56;
/** The line of overlay switches under the title line: it lies over the scene, so the room keeps clear of it. */
const SWITCHES = { mouse: 36, finger: 50 } as const;
/** Between narrow columns they stand in two lines. */
const TWO_LINES = { mouse: 72, finger: 96 } as const;
const NARROW = '(max-width: 1229px)';
const BAND = 178;
const TALL_BAND = 200;
/** For fingers: the chairs of a usual room are then as large as a fingertip. */
const FINGER_BAND = 226;
/** What of the band's height is not the plan's: the line over it and the air around. */
const OVER_PLAN = 33;
const PLAN_WIDTH = 300;
const FINGER_PX = 32;
/** So far chairs of the plan stand apart at least for a pointer: two in one place are two to choose from. */
const MOUSE_PX = 16;
/** Curves or decay over the band, between the columns. */
const RISE = 292;
const TALL_RISE = 400;

const FIRST_LINE = {
  mouse:
    'Drag a sofa, a loudspeaker or a subwoofer to move it; double-click a chair of the plan below to sit in it; drag along the ribbon to sweep the bass.',
  finger:
    'Tap a sofa, a loudspeaker or a subwoofer, then drag its handle; tap a chair of the plan below, then “Sit here”; drag along the ribbon to sweep the bass.',
} as const;

interface ColumnProps {
  readonly side: 'left' | 'right';
  readonly name: string;
  readonly open: boolean;
  readonly children: ReactNode;
  onToggle(): void;
}

/** A column that can be pushed to its edge; what is left then is the handle that brings it back. */
const Column = ({ side, name, open, children, onToggle }: ColumnProps) => (
  <aside className={`column is-${side}${open ? '' : ' is-away'}`} aria-label={name}>
    <button
      type="button"
      className="column-handle"
      aria-expanded={open}
      aria-label={open ? `Push away: ${name}` : `Bring back: ${name}`}
      onClick={onToggle}
    >
      <Icon name={(side === 'left') === open ? 'left' : 'right'} />
      {!open && <span>{name}</span>}
    </button>
    <div className="column-body" inert={!open}>
      {children}
    </div>
  </aside>
);

const COLUMN_NAMES = {
  seat: 'the seat card',
  bass: 'the bass',
  subwoofers: 'the subwoofers',
  findings: 'the findings',
} as const;

const RightColumn = () => {
  const { session } = useView();
  const shown = useSession((state) => state.rightColumn);
  return (
    <>
      <div className="column-tabs">
        <Choice
          label="Right column"
          options={[
            { value: 'seat', word: 'Seat' },
            { value: 'bass', word: 'Bass' },
            { value: 'subwoofers', word: 'Subwoofers' },
            { value: 'findings', word: 'Findings' },
          ]}
          value={shown}
          onChoose={(rightColumn) => session.setState({ rightColumn })}
        />
      </div>
      {/* Each begins at its top: what was scrolled before is another thing. */}
      <div key={shown} className="column-scroll scrolls">
        <ErrorBoundary of={COLUMN_NAMES[shown]}>
          {shown === 'seat' && <SeatCard />}
          {shown === 'bass' && <BassColumn />}
          {shown === 'subwoofers' && <SubwooferChoice />}
          {shown === 'findings' && <Findings />}
        </ErrorBoundary>
      </div>
    </>
  );
};

const Band = ({ finger }: { readonly finger: boolean }) => {
  const band = useRef<HTMLElement>(null);
  const size = useSize(band);
  return (
    <section className="band" aria-label="Seat plan and frequency ribbon" ref={band}>
      {size && (
        <>
          <ErrorBoundary of="the seat plan">
            <div className="seat-side">
              <PictureSeen as="short" />
              <SeatPlan
                maxWidth={PLAN_WIDTH}
                maxHeight={size.height - OVER_PLAN}
                leastPx={finger ? FINGER_PX : MOUSE_PX}
              />
            </div>
          </ErrorBoundary>
          <ErrorBoundary of="the frequency ribbon">
            <Ribbon />
          </ErrorBoundary>
        </>
      )}
    </section>
  );
};

/** The desk: scene behind, columns left and right, a band below. In sit the columns stand aside until they are called. */
export const DeskShell = ({ onSheet }: { onSheet(name: SheetName): void }) => {
  const { session } = useView();
  const mode = useSession((state) => state.mode);
  const cleared = useSession((state) => state.stageCleared);
  const tall = useMedia('(min-height: 960px)');
  const finger = useMedia('(pointer: coarse)');
  const switches = (useMedia(NARROW) ? TWO_LINES : SWITCHES)[finger ? 'finger' : 'mouse'];
  const [open, setOpen] = useState({ overlook: { left: true, right: true }, sit: { left: false, right: false } });
  const { left, right } = open[mode];
  const bassSheet = useSession((state) => state.bassSheet);
  const push = (side: 'left' | 'right', out = !open[mode][side]) =>
    setOpen((now) => ({ ...now, [mode]: { ...now[mode], [side]: out } }));
  const band = finger ? FINGER_BAND : tall ? TALL_BAND : BAND;
  const rise = tall ? TALL_RISE : RISE;
  useStageInsets(
    cleared
      ? { left: 0, right: 0, top: 0, bottom: 0 }
      : { left: left ? LEFT : 0, right: right ? RIGHT : 0, top: TOP + switches, bottom: band + (bassSheet ? rise : 0) },
  );
  useFormShown(left && !cleared);
  const showFindings = () => {
    session.setState({ rightColumn: 'findings' });
    push('right', true);
  };
  if (cleared) {
    return (
      <div className="desk">
        <div className="float">
          <OnlyShown />
          <Notices />
        </div>
        <button type="button" className="uncover word-button" onClick={() => session.setState({ stageCleared: false })}>
          Bring the panels back <kbd>H</kbd>
        </button>
      </div>
    );
  }
  return (
    <div className={`desk is-${mode}`} style={{ '--band': `${band}px` } as React.CSSProperties}>
      <ErrorBoundary of="the top line">
        <TopLine onSheet={onSheet} onFindings={showFindings} />
      </ErrorBoundary>
      <Column side="left" name="Outline" open={left} onToggle={() => push('left')}>
        <ErrorBoundary of="the outline">
          <Outline />
        </ErrorBoundary>
        <ErrorBoundary of="the parameters">
          <Parameters />
        </ErrorBoundary>
      </Column>
      <Column side="right" name="Seat, bass and findings" open={right} onToggle={() => push('right')}>
        <RightColumn />
      </Column>
      <div className="float">
        <OnlyShown />
        <Notices />
        <Told />
      </div>
      <div className="float is-low">{!bassSheet && <FirstVisit says={FIRST_LINE[finger ? 'finger' : 'mouse']} />}</div>
      {/* Between the curves and the top of a low window there is room for the room alone; the ribbon has its own scale. */}
      {(tall || !bassSheet) && <SliceLegend />}
      {bassSheet && (
        <section className="rise" aria-label="Bass over frequency" style={{ height: rise }}>
          <ErrorBoundary of="the curves">
            <BassPlots shown={bassSheet} onClose={() => session.setState({ bassSheet: null })} />
          </ErrorBoundary>
        </section>
      )}
      <Band finger={finger} />
    </div>
  );
};

import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { BassPocket } from '../panels/bass/BassPocket.tsx';
import { PocketChoice } from '../panels/bass-choice/PocketChoice.tsx';
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
import { FileButtons } from '../panels/top/FileButtons.tsx';
import { ClearButton, LightChoice, ModeChoice, OverlaySwitches } from '../panels/top/StageControls.tsx';
import { History, type SheetName } from '../panels/top/TopLine.tsx';
import { useDocument, useSession, useView } from '../state/view.tsx';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { useFormShown } from './useFormShown.ts';
import { useKeptScroll } from './useKeptScroll.ts';
import { useStageInsets } from './useStageInsets.ts';

const TABS = [
  { id: 'seat', word: 'Seat' },
  { id: 'floor', word: 'Floor' },
  { id: 'findings', word: 'Findings' },
  { id: 'parameters', word: 'Parameters' },
] as const;
type Tab = (typeof TABS)[number]['id'];

const TOP = 52;
/** Here the line over the scene has room for a word for the rooms; on a narrow one the room's name opens them. */
const ROOMY = '(min-width: 600px)';
const FIRST_LINE =
  'Tap a sofa, a loudspeaker or a subwoofer, then drag its handle. Tap a chair of the plan, then “Sit here”.';
/** Chairs of the plan are at least this far apart. */
const FINGER_PX = 32;

interface RoomNameProps {
  readonly name: string;
  readonly roomy: boolean;
  onRooms(): void;
}

const RoomName = ({ name, roomy, onRooms }: RoomNameProps) =>
  roomy ? (
    <>
      <h1>{name}</h1>
      <button type="button" className="word-button is-brass" onClick={onRooms}>
        Rooms
      </button>
    </>
  ) : (
    <h1>
      <button type="button" className="pocket-room" aria-label={`Rooms: ${name}`} onClick={onRooms}>
        <span className="pocket-room-name">{name}</span>
        <Icon name="down" />
      </button>
    </h1>
  );

const SeatTab = ({ wide }: { wide: boolean }) => {
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box);
  return (
    <>
      <div className="pocket-plan" ref={box}>
        {size && (
          <div className="seat-side">
            <PictureSeen as="short" />
            <SeatPlan maxWidth={size.width} maxHeight={wide ? 192 : 260} leastPx={FINGER_PX} />
          </div>
        )}
      </div>
      <SeatCard />
    </>
  );
};

const FloorTab = ({ onSheet }: { onSheet(name: SheetName): void }) => {
  return (
    <>
      <div className="pocket-ribbon">
        <Ribbon />
      </div>
      <BassPocket />
      <PocketChoice />
      <OverlaySwitches />
      <LightChoice />
      <div className="pocket-file">
        <ClearButton />
        <FileButtons onSheet={onSheet} />
      </div>
    </>
  );
};

/** Small screens: scene above or beside, one sheet of four tabs within reach of a thumb. */
export const PocketShell = ({ onSheet }: { onSheet(name: SheetName): void }) => {
  const { session } = useView();
  const name = useDocument((state) => state.project.name);
  const touched = useDocument((state) => state.canUndo || state.canRedo);
  const cleared = useSession((state) => state.stageCleared);
  const wide = useMedia('(orientation: landscape)');
  const roomy = useMedia(ROOMY);
  const [tab, setTab] = useState<Tab>('seat');
  const tabs = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const scroll = useRef<HTMLDivElement>(null);
  const { onScroll, toTop } = useKeptScroll(tab, scroll);
  const [outlined, setOutlined] = useState(false);
  const selection = useSession((state) => state.selection);
  // What is chosen in the room is read from its beginning; who goes down the outline stays where they are.
  useEffect(() => {
    if (selection && !document.activeElement?.closest('.outline')) toTop();
  }, [selection, toTop]);
  useFormShown(tab === 'parameters' && !cleared);
  const size = useSize(sheet);
  useStageInsets({
    left: 0,
    top: TOP,
    right: wide && !cleared ? (size?.width ?? 0) : 0,
    bottom: wide || cleared ? 0 : (size?.height ?? 0),
  });
  // Who turns to another tab has done with drawing on a wall; what is chosen stays chosen for its form.
  const show = (next: Tab) => {
    setTab(next);
    if (next !== tab) session.setState({ tool: null, barAway: selection?.kind === 'surface' });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (by === 0) return;
    event.preventDefault();
    const next = TABS[(TABS.findIndex(({ id }) => id === tab) + by + TABS.length) % TABS.length].id;
    show(next);
    tabs.current?.querySelector<HTMLElement>(`#tab-${next}`)?.focus();
  };
  return (
    <div className="pocket">
      <header className="pocket-top">
        <RoomName name={name} roomy={roomy} onRooms={() => onSheet('rooms')} />
        {(roomy || touched) && (
          <div className="pocket-history">
            <History />
          </div>
        )}
        <ModeChoice />
      </header>
      <div className="float">
        <OnlyShown />
        <Notices />
        <Told />
      </div>
      <div className="float is-low">{!cleared && <FirstVisit says={FIRST_LINE} />}</div>
      {cleared && (
        <button type="button" className="uncover word-button" onClick={() => session.setState({ stageCleared: false })}>
          Bring the panels back
        </button>
      )}
      <div className="pocket-sheet" ref={sheet} hidden={cleared}>
        <div
          className="pocket-scroll scrolls"
          ref={scroll}
          role="tabpanel"
          aria-labelledby={`tab-${tab}`}
          onScroll={onScroll}
        >
          <ErrorBoundary key={tab} of="this sheet">
            {tab === 'seat' && <SeatTab wide={wide} />}
            {tab === 'floor' && <FloorTab onSheet={onSheet} />}
            {tab === 'findings' && <Findings />}
            {tab === 'parameters' && (
              <>
                <details
                  className="pocket-outline"
                  open={outlined}
                  onToggle={({ currentTarget }) => setOutlined(currentTarget.open)}
                >
                  <summary>Choose from the outline</summary>
                  <Outline />
                </details>
                <Parameters />
              </>
            )}
          </ErrorBoundary>
        </div>
        <div className="pocket-tabs" role="tablist" ref={tabs} onKeyDown={onKeyDown}>
          {TABS.map(({ id, word }) => (
            <button
              key={id}
              id={`tab-${id}`}
              type="button"
              role="tab"
              aria-selected={id === tab}
              tabIndex={id === tab ? 0 : -1}
              onClick={() => show(id)}
            >
              {word}
            </button>
          ))}
        </div>
      </div>
    </div>
  );
};

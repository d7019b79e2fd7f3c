import { type LightPreset, type ViewMode, wholeView } from '../../state/session.ts';
import { useSession, useView } from '../../state/view.tsx';
import { Icon } from '../marks/Icon.tsx';
import { Choice, type Option, Switch } from './Choice.tsx';

const MODES: readonly Option<ViewMode>[] = [
  { value: 'overlook', word: 'Overlook', key: '1' },
  { value: 'sit', word: 'Sit', key: '2' },
];
type Place = 'ear' | 'carpet' | 'elsewhere';
const PLACES: readonly Option<Place>[] = [
  { value: 'ear', word: 'at ears' },
  { value: 'carpet', word: 'on carpet' },
];
const LIGHTS: readonly Option<LightPreset>[] = [
  { value: 'clean', word: 'Clean' },
  { value: 'dim', word: 'Dim' },
  { value: 'dark', word: 'Dark' },
];

export const ModeChoice = () => {
  const { session } = useView();
  const mode = useSession((state) => state.mode);
  return (
    <Choice
      label="View"
      options={MODES}
      value={mode}
      onChoose={(next) => session.setState({ mode: next })}
      onAgain={() => session.setState(wholeView)}
    />
  );
};

/** Puts every panel away, for a look at the room alone. */
export const ClearButton = () => {
  const { session } = useView();
  return (
    <button
      type="button"
      className="word-button"
      aria-keyshortcuts="h"
      onClick={() => session.setState({ stageCleared: true })}
    >
      Clear stage
    </button>
  );
};

/** The two heights that are wanted most; every other place of the slice is set with the bass. */
const SlicePlace = () => {
  const { session } = useView();
  const { plane, height } = useSession((state) => state.slice);
  const place: Place = plane === 'level' && typeof height === 'string' ? height : 'elsewhere';
  const choose = (next: Place) => {
    if (next !== 'elsewhere') session.setState(({ slice }) => ({ slice: { ...slice, plane: 'level', height: next } }));
  };
  return <Choice quiet label="Height of the bass floor" options={PLACES} value={place} onChoose={choose} />;
};

/** What is drawn over the room. */
export const OverlaySwitches = () => {
  const { session } = useView();
  const overlays = useSession((state) => state.overlays);
  const slice = useSession((state) => state.slice);
  // From a seat only the people are drawn: nothing lies over what one has come to see.
  const outside = useSession((state) => state.mode === 'overlook');
  const set = (part: Partial<typeof overlays>) => session.setState({ overlays: { ...overlays, ...part } });
  return (
    <fieldset className="switches">
      <legend className="unseen">Shown in the room</legend>
      {outside && (
        <>
          <Switch
            word="Sightlines"
            shortcut="g"
            on={overlays.sightlines}
            onChange={(sightlines) => set({ sightlines })}
          />
          <Switch word="Cones" shortcut="c" on={overlays.cones} onChange={(cones) => set({ cones })} />
        </>
      )}
      <Switch word="People" shortcut="p" on={overlays.people} onChange={(people) => set({ people })} />
      {outside && (
        <Switch
          word="Bass floor"
          shortcut="b"
          on={slice.shown}
          onChange={(shown) => session.setState({ slice: { ...slice, shown } })}
        />
      )}
      {outside && slice.shown && <SlicePlace />}
    </fieldset>
  );
};

export const LightChoice = () => {
  const { session } = useView();
  const light = useSession((state) => state.light);
  return (
    <div className="light">
      <Icon name="lamp" />
      <Choice
        quiet
        label="Light"
        options={LIGHTS}
        value={light}
        onChoose={(next) => session.setState({ light: next })}
      />
    </div>
  );
};

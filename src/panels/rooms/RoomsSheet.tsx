import { useEffect, useState } from 'react';
import { type DemoCard, type RoomActions, type RoomCard, useAppActions } from '../actions.ts';
import { Sheet } from '../sheets/Sheet.tsx';
import { BeginForm } from './BeginForm.tsx';
import { PlanThumbnail } from './PlanThumbnail.tsx';
import './rooms.css';

const whenText = (savedAtMs: number): string =>
  new Date(savedAtMs).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });

interface KeptListProps {
  readonly rooms: RoomActions;
  readonly onDone: () => void;
}

/** The rooms this browser keeps; the one that is open is marked and cannot be removed from here. */
const KeptList = ({ rooms, onDone }: KeptListProps) => {
  const [kept, setKept] = useState<readonly RoomCard[] | 'refused' | null>(null);
  const [removed, setRemoved] = useState<string | null>(null);
  const look = () => {
    rooms.list().then(setKept, () => setKept('refused'));
  };
  useEffect(look, [rooms]);
  if (kept === null) return <p aria-busy="true">Looking for rooms.</p>;
  if (kept === 'refused')
    return (
      <p>This browser does not let Parterre keep rooms, as in some private windows. Save a file to keep your work.</p>
    );
  const remove = ({ id, name }: RoomCard) => {
    rooms.remove(id).then(() => {
      setRemoved(name);
      look();
    }, look);
  };
  const putBack = () => {
    rooms.putBack().then(() => {
      setRemoved(null);
      look();
    }, look);
  };
  return (
    <>
      {removed !== null && (
        <p className="rooms-removed" role="status">
          {removed} is removed.{' '}
          <button type="button" className="sheet-word" onClick={putBack}>
            Put it back
          </button>
        </p>
      )}
      {kept.length === 0 && <p>None yet. A room is kept here by itself at your first change.</p>}
      <ul className="room-cards">
        {kept.map((card) => {
          const open = card.id === rooms.currentId();
          return (
            <li key={card.id}>
              <button
                type="button"
                className="room-card"
                aria-current={open || undefined}
                onClick={() => void rooms.open(card.id).then(onDone)}
              >
                {card.sketch && <PlanThumbnail sketch={card.sketch} />}
                <strong>{card.name}</strong>
                <small>{open ? 'Open now' : `Kept ${whenText(card.savedAtMs)}`}</small>
              </button>
              {!open && (
                <button
                  type="button"
                  className="sheet-word"
                  aria-label={`Remove ${card.name}`}
                  onClick={() => remove(card)}
                >
                  Remove
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </>
  );
};

const Demos = ({ rooms, onDone }: KeptListProps) => {
  const [demos, setDemos] = useState<readonly DemoCard[]>([]);
  useEffect(() => {
    void rooms.demos().then(setDemos);
  }, [rooms]);
  return (
    <ul className="room-cards">
      {demos.map(({ id, name, says, sketch }) => (
        <li key={id}>
          <button type="button" className="room-card" onClick={() => void rooms.openDemo(id).then(onDone)}>
            <PlanThumbnail sketch={sketch} />
            <strong>{name}</strong>
            <small>{says}</small>
          </button>
        </li>
      ))}
    </ul>
  );
};

interface RoomsSheetProps {
  onClose(): void;
  /** A room was opened: the sheet is done with. */
  onOpened(): void;
}

/** Where rooms come from and where they are kept. */
export const RoomsSheet = ({ onClose, onOpened }: RoomsSheetProps) => {
  const actions = useAppActions();
  if (!actions) return null;
  const { rooms } = actions;
  return (
    <Sheet title="Rooms" onClose={onClose}>
      <div className="rooms">
        <section>
          <h3>An empty room</h3>
          <BeginForm onBegin={(lengths) => void rooms.begin(lengths).then(onOpened)} />
        </section>
        <section>
          <h3>Ready-made rooms to try</h3>
          <Demos rooms={rooms} onDone={onOpened} />
        </section>
        <section>
          <h3>Kept in this browser</h3>
          <KeptList rooms={rooms} onDone={onOpened} />
        </section>
        <p className="rooms-foot">
          <button type="button" className="sheet-word" onClick={() => void rooms.copy().then(onOpened)}>
            Go on with a copy of this room
          </button>
          <button
            type="button"
            className="sheet-word"
            onClick={() => {
              onClose();
              actions.openFile();
            }}
          >
            Open a file
          </button>
          <span>Rooms stay in this browser only. A private window forgets them; a saved file does not.</span>
        </p>
      </div>
    </Sheet>
  );
};

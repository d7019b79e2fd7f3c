import { useEffect, useState } from 'react';
import { useAppActions } from '../actions.ts';

const carriesFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/** Takes a room file dropped anywhere on the page, and says so while one is held over it. */
export const DropZone = () => {
  const actions = useAppActions();
  const [over, setOver] = useState(false);
  useEffect(() => {
    if (!actions) return;
    const onOver = (event: DragEvent) => {
      if (!carriesFile(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent) => {
      if (!carriesFile(event)) return;
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file) actions.openDropped(file);
    };
    window.addEventListener('dragover', onOver);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('drop', onDrop);
    };
  }, [actions]);
  if (!over) return null;
  return (
    <div className="drop">
      <p>Let go to open this room</p>
    </div>
  );
};

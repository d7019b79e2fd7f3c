import { useState } from 'react';
import { SubwooferChoice } from './SubwooferChoice.tsx';

/** On a small screen the choice of subwoofers opens below the floor's ribbon; nothing is worked out while it is shut. */
export const PocketChoice = () => {
  const [open, setOpen] = useState(false);
  return (
    <details className="pocket-choice" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Where the subwoofers go</summary>
      {open && <SubwooferChoice />}
    </details>
  );
};

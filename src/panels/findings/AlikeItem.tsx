import { useState } from 'react';
import { FindingItem } from './FindingItem.tsx';
import type { Alike } from './order.ts';

/** The worst of one rule, and how many seats or things share its verdict: they are listed when asked for. */
export const AlikeItem = ({ alike: { worst, others } }: { readonly alike: Alike }) => {
  const [open, setOpen] = useState(false);
  return (
    <>
      <FindingItem finding={worst} />
      {others.length > 0 && (
        <li className="findings-alike">
          <details onToggle={(event) => setOpen(event.currentTarget.open)}>
            <summary>
              {others.length} more like this, {worst.verdict}
            </summary>
            {open && (
              <ol>
                {others.map((finding) => (
                  <FindingItem key={finding.id} finding={finding} />
                ))}
              </ol>
            )}
          </details>
        </li>
      )}
    </>
  );
};

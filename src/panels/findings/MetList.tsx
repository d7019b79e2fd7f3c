import { useState } from 'react';
import type { Finding } from '../../analysis/types.ts';
import { FindingItem } from './FindingItem.tsx';

/** What is met, counted; listed only when asked for, since it is long and changes with every move. */
export const MetList = ({ findings, where }: { findings: readonly Finding[]; where: string }) => {
  const [open, setOpen] = useState(false);
  if (findings.length === 0) return null;
  return (
    <details className="findings-met" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {findings.length} met{where}
      </summary>
      {open && (
        <ol>
          {findings.map((finding) => (
            <FindingItem key={finding.id} finding={finding} />
          ))}
        </ol>
      )}
    </details>
  );
};

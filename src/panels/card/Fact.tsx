import type { ReactNode } from 'react';

/** One line of a list of facts: what it is, then how much. */
export const Fact = ({ word, children }: { word: string; children: ReactNode }) => (
  <div className="fact">
    <dt>{word}</dt>
    <dd>{children}</dd>
  </div>
);

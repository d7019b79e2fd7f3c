import { type ReactNode, useEffect } from 'react';
import { useResults, useView } from '../../state/view.tsx';
import { Alternatives } from './Alternatives.tsx';
import { Arrangements } from './Arrangements.tsx';
import { Crossover, useChain } from './Crossover.tsx';
import { Equaliser } from './Equaliser.tsx';
import { Headroom } from './Headroom.tsx';
import { Improve } from './Improve.tsx';
import './bass-choice.css';

const Part = ({ title, children }: { title: string; children: ReactNode }) => (
  <details className="choice-part">
    <summary>
      <h3>{title}</h3>
    </summary>
    {children}
  </details>
);

const Chain = () => {
  const { chain, current } = useChain();
  const nothing = <p className="waiting">{chain ? 'There is no subwoofer yet.' : 'Working it out …'}</p>;
  return (
    <div className={current ? undefined : 'is-stale'} aria-busy={!current}>
      <Part title="Through the crossover">
        {chain?.crossover ? (
          <Crossover crossover={chain.crossover} revision={chain.revision} />
        ) : chain?.equaliser ? (
          <p className="waiting">There is no centre loudspeaker to meet.</p>
        ) : (
          nothing
        )}
      </Part>
      <Part title="Headroom">{chain?.equaliser ? <Headroom headroom={chain.headroom} /> : nothing}</Part>
      <Part title="Equaliser">
        {chain?.equaliser ? <Equaliser equaliser={chain.equaliser} current={current} /> : nothing}
      </Part>
    </div>
  );
};

/** Where the subwoofers go and how many: search, the trade's arrangements, the chain behind the room, what is kept. */
export const SubwooferChoice = () => {
  const { session } = useView();
  const trouble = useResults((state) => state.choice.trouble);
  useEffect(() => {
    session.setState({ choosing: true });
    return () => session.setState({ choosing: false });
  }, [session]);
  return (
    <div className="bass-choice">
      {trouble && (
        <p className="fact-note is-caution">This could not be worked out just now. Change anything to try again.</p>
      )}
      <Improve />
      <Part title="The trade’s arrangements">
        <Arrangements />
      </Part>
      <Chain />
      <Part title="Alternatives">
        <Alternatives />
      </Part>
    </div>
  );
};

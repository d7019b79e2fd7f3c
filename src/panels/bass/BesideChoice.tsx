import type { Beside } from '../../proposals/beside.ts';
import { useView } from '../../state/view.tsx';
import { useBeside } from './useBeside.ts';

/** What is laid over the curves: filters, the centre through the crossover, a kept arrangement. */
export const BesideChoice = () => {
  const { session } = useView();
  const { options, value } = useBeside();
  if (options.length < 2) return null;
  return (
    <label className="beside">
      <span>Over it</span>
      <select value={value} onChange={({ target }) => session.setState({ beside: target.value as Beside })}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.word}
          </option>
        ))}
      </select>
    </label>
  );
};

import { useResults, useSession, useView } from '../../state/view.tsx';
import { Icon } from '../marks/Icon.tsx';
import './notices.css';

/** What the program has to say without being asked: files refused, numbers that cannot be had. Read out politely. */
export const Notices = () => {
  const { session } = useView();
  const notices = useSession((state) => state.notices);
  const trouble = useResults((state) => state.trouble);
  const dismiss = (id: number) =>
    session.setState((state) => ({ notices: state.notices.filter((notice) => notice.id !== id) }));
  return (
    <div className="notices" role="status" aria-live="polite">
      {trouble !== null && <p className="notice is-caution">{trouble}</p>}
      {notices.map(({ id, tone, title, lines, action }) => (
        <section key={id} className={`notice is-${tone}`}>
          <header>
            <h2>{title}</h2>
            <button type="button" className="icon-button" aria-label={`Put away: ${title}`} onClick={() => dismiss(id)}>
              <Icon name="close" />
            </button>
          </header>
          {lines.length > 0 && (
            <ul className="scrolls">
              {lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
          {action && (
            <button
              type="button"
              className="word-button is-brass"
              onClick={() => {
                dismiss(id);
                action.run();
              }}
            >
              {action.word}
            </button>
          )}
        </section>
      ))}
    </div>
  );
};

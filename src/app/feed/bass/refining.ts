import type { View } from '../../../state/view.tsx';

/** Work shorter than this is not worth a word. */
const NOTICED_AFTER_MS = 300;

/** Says in the results that a better answer is on its way, once that takes long enough to be noticed. */
export const createRefining = (view: View): { begin(): void; end(): void } => {
  let timer: ReturnType<typeof setTimeout> | null = null;
  const say = (refining: boolean) => {
    if (view.results.getState().refining !== refining) view.results.setState({ refining });
  };
  return {
    begin() {
      timer ??= setTimeout(() => say(true), NOTICED_AFTER_MS);
    },
    end() {
      if (timer !== null) clearTimeout(timer);
      timer = null;
      say(false);
    },
  };
};

import type { Notice, SessionStore } from './session.ts';

/** Puts a notice on top of the others; the same words are not said twice. */
export const addNotice = (session: SessionStore, notice: Omit<Notice, 'id'>): void => {
  session.setState(({ notices }) => {
    const others = notices.filter(({ title, lines }) => title !== notice.title || lines.join() !== notice.lines.join());
    const id = 1 + Math.max(0, ...notices.map((one) => one.id));
    return { notices: [{ ...notice, id }, ...others] };
  });
};

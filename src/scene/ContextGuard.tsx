import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { requestFrame } from '../state/frames.ts';
import type { SessionStore } from '../state/session.ts';
import { useView } from '../state/view.tsx';

const addNotice = (session: SessionStore): number => {
  const { notices } = session.getState();
  const id = 1 + Math.max(0, ...notices.map((notice) => notice.id));
  const notice = {
    id,
    tone: 'caution' as const,
    title: 'The picture of the room is away for a moment',
    lines: [
      'The graphics processor was taken from this page. Numbers and panels work on; the room comes back by itself.',
    ],
  };
  session.setState({ notices: [...notices, notice] });
  return id;
};

/**
 * Lives through the loss of the graphics context: says so, has everything taken down while it is away (what belonged to it
 * is gone with it) and built anew when it is back.
 */
export const ContextGuard = ({ onChange }: { readonly onChange: (alive: boolean) => void }) => {
  const canvas = useThree((state) => state.gl.domElement);
  const { session } = useView();
  useEffect(() => {
    let noticeId: number | null = null;
    const lost = (event: Event) => {
      event.preventDefault();
      noticeId ??= addNotice(session);
      onChange(false);
    };
    const restored = () => {
      const said = noticeId;
      noticeId = null;
      session.setState((state) => ({ notices: state.notices.filter((notice) => notice.id !== said) }));
      onChange(true);
      requestFrame('context-restored');
    };
    canvas.addEventListener('webglcontextlost', lost);
    canvas.addEventListener('webglcontextrestored', restored);
    return () => {
      canvas.removeEventListener('webglcontextlost', lost);
      canvas.removeEventListener('webglcontextrestored', restored);
    };
  }, [canvas, session, onChange]);
  return null;
};

import { describe, expect, it } from 'vitest';
import { createSessionStore } from '../../../src/state/session.ts';

const LIT = { findingId: 'picture-in-view/a', items: [{ kind: 'picture', id: 'picture' }] } as const;

describe('what “show me” lit', () => {
  it('goes out when another view, another seat or the bare stage is asked for', () => {
    for (const change of [{ mode: 'sit' }, { seatId: 'b' }, { stageCleared: true }] as const) {
      const session = createSessionStore();
      session.setState({ seatId: 'a', spotlight: LIT });
      session.setState(change);
      expect(session.getState().spotlight).toBeNull();
    }
  });

  it('stays while other things change, and when it is lit together with a seat', () => {
    const session = createSessionStore();
    session.setState({ seatId: 'b', spotlight: LIT });
    session.setState({ frequencyHz: 63 });
    expect(session.getState().spotlight).toBe(LIT);
  });
});

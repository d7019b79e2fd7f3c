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

describe('drawing', () => {
  const DOOR = { kind: 'opening', what: 'door' } as const;
  const WALL = { kind: 'surface', id: 'left' } as const;

  it('ends when the stage is cleared', () => {
    const session = createSessionStore();
    session.setState({ tool: DOOR });
    session.setState({ stageCleared: true });
    expect(session.getState().tool).toBeNull();
  });

  it('has its bar back with the next choice, also of the same wall', () => {
    const session = createSessionStore();
    session.setState({ selection: WALL });
    session.setState({ tool: null, barAway: true });
    session.setState({ frequencyHz: 63 });
    expect(session.getState().barAway).toBe(true);
    session.setState({ selection: { ...WALL } });
    expect(session.getState().barAway).toBe(false);
  });
});

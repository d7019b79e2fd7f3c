import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { feedChoice } from '../../../../src/app/feed/choice.ts';
import type { Lane } from '../../../../src/compute/lane.ts';
import { storeAlternative } from '../../../../src/model/commands/alternatives.ts';
import type { SessionState } from '../../../../src/state/session.ts';
import { plausibleView } from '../../panels/fixture.ts';

/** What is asked of the background, by kind; nothing is ever answered. */
const asking = () => {
  const view = plausibleView();
  view.document.actions.apply('Keep', (project) => storeAlternative(project, { name: 'Kept' }));
  const asked: string[] = [];
  const studies = {
    ask: ({ kind }: { kind: string }) => {
      asked.push(kind);
      return new Promise(() => undefined);
    },
    stop: () => undefined,
  };
  feedChoice(view, { studies } as unknown as Lane);
  const look = async (part: Partial<SessionState>) => {
    asked.length = 0;
    view.session.setState(part);
    await vi.advanceTimersByTimeAsync(1000);
    return [...asked].sort();
  };
  return { view, look, asked };
};

describe('what the choice of subwoofers has worked out', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('is only what is looked at: what lies over the curves, or all of it', async () => {
    const { look } = asking();
    expect(await look({ frequencyHz: 50 })).toEqual([]);
    expect(await look({ beside: 'filters' })).toEqual([]);
    expect(await look({ beside: 'centre' })).toEqual(['chain']);
    expect(await look({ beside: 'filled' })).toEqual([]);
    expect(await look({ beside: 'kept:one' })).toEqual(['alternatives']);
    expect(await look({ choosing: true })).toEqual(['arrangements']);
    expect(await look({ choosing: false, beside: 'nothing' })).toEqual([]);
  });

  it('is worked out anew once the hand rests, and not while nothing of it is looked at', async () => {
    const { view, look, asked } = asking();
    await look({ choosing: true });
    const louder = () =>
      view.document.actions.apply('Gain', (project) => ({
        ok: true,
        project: { ...project, subwoofers: project.subwoofers.map((one) => ({ ...one, gainDb: one.gainDb + 1 })) },
      }));
    asked.length = 0;
    louder();
    await vi.advanceTimersByTimeAsync(1000);
    expect([...asked].sort()).toEqual(['alternatives', 'arrangements', 'chain']);
    await look({ choosing: false });
    louder();
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked).toEqual([]);
  });
});

// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/math/vec3.ts';
import { itemActions } from '../../../src/panels/useItemActions.ts';
import type { View } from '../../../src/state/view.tsx';
import { plausibleView } from './fixture.ts';

const placeOf = ({ document }: View, id: string): Vec3 => {
  const found = document.getState().project.loudspeakers.find((one) => one.id === id);
  if (!found) throw new Error(`no loudspeaker ${id}`);
  return found.atM;
};

describe('moving by keyboard', () => {
  it('takes the other one of a pair along as its mirror image, as the hand does', () => {
    const view = plausibleView();
    const [left, right] = [placeOf(view, 'L'), placeOf(view, 'R')];
    itemActions(view).nudge([{ kind: 'loudspeaker', id: 'L' }], [0.05, 0, 0.02]);
    expect(placeOf(view, 'L')[0]).toBeCloseTo(left[0] + 0.05, 9);
    expect(placeOf(view, 'R')[0]).toBeCloseTo(right[0] - 0.05, 9);
    expect(placeOf(view, 'R')[2]).toBeCloseTo(right[2] + 0.02, 9);
  });

  it('leaves the other one where it is while pairs are let go', () => {
    const view = plausibleView();
    const right = placeOf(view, 'R');
    view.session.setState({ pairsReleased: true });
    itemActions(view).nudge([{ kind: 'loudspeaker', id: 'L' }], [0.05, 0, 0]);
    expect(placeOf(view, 'L')[0]).not.toBe(placeOf(plausibleView(), 'L')[0]);
    expect(placeOf(view, 'R')).toEqual(right);
  });
});

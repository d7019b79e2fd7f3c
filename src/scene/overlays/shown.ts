import type { SessionState } from '../../state/session.ts';

/**
 * Whether lines of sight and angles are drawn: from outside, and not while a subwoofer is in the hand. It changes none of
 * them, and the floor under it is then what one looks at.
 */
export const besideTheBass = ({ mode, dragging }: Pick<SessionState, 'mode' | 'dragging'>): boolean =>
  mode === 'overlook' && dragging?.kind !== 'subwoofer';

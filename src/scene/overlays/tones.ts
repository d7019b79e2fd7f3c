/** The colours overlays are drawn in: brass and its kin, one a group, told apart by dash and label as well. */
export const TONE = {
  brass: '#d2ae68',
  strong: '#f0ce86',
  left: '#f2d494',
  right: '#eda97c',
  height: '#fbf1da',
  sight: '#efe8dc',
} as const;

export type Group = 'left' | 'right' | 'height';

/** The group by channel label: upper and top channels are heights wherever one sits; others by their side of the seat. */
export const groupOf = (channel: string, azimuthDeg: number): Group => {
  if (channel.startsWith('U') || channel.startsWith('T')) return 'height';
  return azimuthDeg <= 0 ? 'left' : 'right';
};

/** Dash and gap in metres; the left group's lines are whole. */
export const GROUP_DASH: Readonly<Record<Group, readonly [number, number] | undefined>> = {
  left: undefined,
  right: [0.13, 0.035],
  height: [0.045, 0.035],
};

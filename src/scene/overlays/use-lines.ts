import { useEffect, useMemo } from 'react';
import { LineBatch, type LineStyle } from './lines.ts';

/** A line batch for a component's life. The style is a constant of the module that asks. */
export const useLines = (style: LineStyle): LineBatch => {
  const batch = useMemo(() => new LineBatch(style), [style]);
  useEffect(() => () => batch.dispose(), [batch]);
  return batch;
};

import type { LevaPanel } from 'leva';
import type { ComponentProps } from 'react';

type Theme = NonNullable<ComponentProps<typeof LevaPanel>['theme']>;

const SANS = '"Source Sans 3", "Segoe UI", system-ui, sans-serif';

/** Leva's panel in the house's colours and type. */
export const DIALS_THEME: Theme = {
  colors: {
    elevation1: '#1c1815',
    elevation2: '#1c1815',
    elevation3: '#26201b',
    accent1: '#d2ae68',
    accent2: '#d2ae68',
    accent3: '#f0ce86',
    highlight1: '#9a8f80',
    highlight2: '#b9ad9b',
    highlight3: '#efe8dc',
    vivid1: '#f0ce86',
    folderWidgetColor: '#d2ae68',
    folderTextColor: '#d2ae68',
    toolTipBackground: '#26201b',
    toolTipText: '#efe8dc',
  },
  radii: { xs: '3px', sm: '3px', lg: '4px' },
  space: { xs: '4px', sm: '6px', md: '10px', rowGap: '6px', colGap: '8px' },
  fonts: { mono: SANS, sans: SANS },
  fontSizes: { root: '14px', toolTip: '14px' },
  sizes: {
    rootWidth: '100%',
    controlWidth: '152px',
    rowHeight: '30px',
    folderTitleHeight: '30px',
    checkboxSize: '24px',
  },
};

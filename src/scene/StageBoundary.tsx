import { Component, type ReactNode } from 'react';

const SENTENCES = {
  'no-webgl': 'This browser draws no 3-D here. The plan, the numbers and the files work all the same.',
  failed: 'The room could not be drawn. The plan, the numbers and the files work all the same.',
} as const;

/** What the panels leave of the stage. */
const FREE = ['top', 'right', 'bottom', 'left'].map((side) => `var(--stage-inset-${side}, 0px)`).join(' ');

/** Stands where the scene would be. */
export const NoScene = ({ why }: { readonly why: keyof typeof SENTENCES }) => (
  <div
    role="status"
    className="no-scene"
    style={{ position: 'absolute', inset: FREE, display: 'grid', placeItems: 'center' }}
  >
    <p style={{ maxWidth: '28rem', padding: '1rem', color: '#efe8dc', fontSize: 16, lineHeight: 1.5 }}>
      {SENTENCES[why]}
    </p>
  </div>
);

interface Props {
  readonly children: ReactNode;
}

/** Keeps a fault of the scene from taking the panels with it. */
export class StageBoundary extends Component<Props, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    return this.state.failed ? <NoScene why="failed" /> : this.props.children;
  }
}

import { Component, type ReactNode } from 'react';

interface BoundaryProps {
  /** What is inside, as the sentence names it: "the room in 3D". */
  readonly of: string;
  readonly children: ReactNode;
}
interface BoundaryState {
  readonly broken: boolean;
}

/** Keeps a fault in one part from taking the page: the part says so and can be tried again, the rest works on. */
export class ErrorBoundary extends Component<BoundaryProps, BoundaryState> {
  override state: BoundaryState = { broken: false };

  static getDerivedStateFromError(): BoundaryState {
    return { broken: true };
  }

  override render(): ReactNode {
    if (!this.state.broken) return this.props.children;
    return (
      <div className="broken" role="alert">
        <p>Something went wrong in {this.props.of}. Your project is safe; everything else works on.</p>
        <button type="button" className="word-button is-brass" onClick={() => this.setState({ broken: false })}>
          Try again
        </button>
      </div>
    );
  }
}

/** Keeps the rest of the page going when a part of it cannot be fetched or drawn; says so, and that nothing is lost. */
import { Component, type ErrorInfo, type ReactNode } from 'react';

interface FaultProps {
  /** The part, as the sentence begins: 'The stage', 'This card'. */
  readonly what: string;
  readonly children: ReactNode;
}

export class Fault extends Component<FaultProps, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override componentDidCatch(error: Error, info: ErrorInfo): void {
    console.error(error, info.componentStack);
  }

  override render(): ReactNode {
    if (!this.state.failed) return this.props.children;
    return (
      <p className="cap fault" role="alert">
        {this.props.what} could not be shown. Nothing is lost: what was done is kept. Load the page again.
      </p>
    );
  }
}

import { Component, type ReactNode } from "react";

interface SafeProps {
  readonly children: ReactNode;
  /** A change of it tries again: another screen, another state. */
  readonly place: string;
}

interface SafeState {
  readonly why: string | null;
  readonly place: string;
}

/** A fault of the app itself: it says so in words, and that nothing kept is touched by it. */
export class Safe extends Component<SafeProps, SafeState> {
  override state: SafeState = { why: null, place: this.props.place };

  static getDerivedStateFromError(error: unknown): Partial<SafeState> {
    return { why: error instanceof Error ? error.message : String(error) };
  }

  static getDerivedStateFromProps(props: SafeProps, state: SafeState): Partial<SafeState> | null {
    return props.place === state.place ? null : { why: null, place: props.place };
  }

  override render(): ReactNode {
    if (this.state.why === null) return this.props.children;
    return (
      <div className="frame">
        <main className="page">
          <section>
            <h1 className="heading">This screen cannot be shown</h1>
            <p className="trouble" role="alert">
              {this.state.why}
            </p>
            <p>A fault of the app. Everything that was kept is untouched.</p>
            <div className="row-of-buttons">
              <button type="button" className="button filled" onClick={() => this.setState({ why: null })}>
                Try again
              </button>
              <a className="button" href="#/">
                Back to the Apron
              </a>
            </div>
          </section>
        </main>
      </div>
    );
  }
}

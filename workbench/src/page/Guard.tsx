import { Component, type ReactNode } from 'react';

type Props = { readonly children: ReactNode };
type State = { readonly reason: string | undefined };

/** Keeps a picture that cannot be drawn from taking the page with it. React knows no other way than a class. */
export class Guard extends Component<Props, State> {
  override state: State = { reason: undefined };

  static getDerivedStateFromError(broken: unknown): State {
    return { reason: String(broken) };
  }

  override componentDidUpdate({ children }: Props) {
    if (this.state.reason !== undefined && children !== this.props.children)
      this.setState({ reason: undefined });
  }

  override render() {
    const { reason } = this.state;
    if (reason === undefined) return this.props.children;
    return (
      <p className="state-note">
        This picture could not be drawn ({reason}). Its figures stand in the table.
      </p>
    );
  }
}

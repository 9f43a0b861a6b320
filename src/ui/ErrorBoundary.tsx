import { Component, type ReactNode } from 'react'
import { Failure } from './Failure.tsx'

type Props = {
  readonly children: ReactNode
  /** Puts the program back to something that is known to work. */
  readonly startAnew: () => void
}
type State = { readonly failure: { readonly reason: unknown } | null }

/** Stands outside everything that draws: whatever fails inside, in React or in a frame, the user is told and can go on. */
export class ErrorBoundary extends Component<Props, State> {
  override state: State = { failure: null }

  static getDerivedStateFromError(reason: unknown): State {
    return { failure: { reason } }
  }

  override componentDidMount(): void {
    addEventListener('error', this.onError)
  }

  override componentWillUnmount(): void {
    removeEventListener('error', this.onError)
  }

  /** Frames run outside React. Events without an error are the browser's remarks, such as a resize told one frame late. */
  private readonly onError = ({ error }: ErrorEvent): void => {
    if (error instanceof Error) this.setState({ failure: { reason: error } })
  }

  override render(): ReactNode {
    const { failure } = this.state
    if (failure === null) return this.props.children
    return (
      <Failure
        reason={failure.reason}
        startAnew={() => {
          this.props.startAnew()
          this.setState({ failure: null })
        }}
      />
    )
  }
}

import { Component, type ReactNode } from 'react'
import type { SavedText } from '../keep/saveText.ts'
import { Failure } from './Failure.tsx'

type Props = {
  readonly children: ReactNode
  /** Puts the program back to something that is known to work. */
  readonly startAnew: () => void
  /** The visitor's own figure that is on the screen, if it is one. */
  readonly mine: () => SavedText | null
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
        mine={this.props.mine()}
        startAnew={() => {
          this.props.startAnew()
          this.setState({ failure: null })
        }}
      />
    )
  }
}

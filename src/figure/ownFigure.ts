import type { Figure } from './figure.ts'

/** A figure that a user brought, with its file's text: the text is what is kept and sent. */
export type OwnFigure = { readonly figure: Figure; readonly text: string }

/** The figure of a user's file. Its id has a colon, which no demo's has: the two never clash. */
export const ownFigure = (figure: Figure, text: string, file: string): OwnFigure => ({
  figure: { ...figure, id: `own:${file}` },
  text,
})

/** With one more; the same file again takes the former's place. */
export function withOwn(own: readonly OwnFigure[], brought: OwnFigure): OwnFigure[] {
  const former = own.findIndex(({ figure }) => figure.id === brought.figure.id)
  return former < 0 ? [...own, brought] : own.with(former, brought)
}

import type { Figure } from './figure.ts'

/** A figure that a user brought, with its file's text: the text is what is kept and sent. */
export type OwnFigure = { readonly figure: Figure; readonly text: string }

/** Has a colon, which no demo's id has: the two never clash. */
const OWN = 'own:'

/** The figure of a user's file. */
export const ownFigure = (figure: Figure, text: string, file: string): OwnFigure => ({
  figure: { ...figure, id: `${OWN}${file}` },
  text,
})

/** The file that a figure was brought in. */
export const fileOf = ({ figure }: OwnFigure): string => figure.id.slice(OWN.length)

/** With one more; the same file again takes the former's place. */
export function withOwn(own: readonly OwnFigure[], brought: OwnFigure): OwnFigure[] {
  const former = own.findIndex(({ figure }) => figure.id === brought.figure.id)
  return former < 0 ? [...own, brought] : own.with(former, brought)
}

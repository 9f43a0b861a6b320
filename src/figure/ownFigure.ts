import type { Figure } from './figure.ts'

/** A figure that a user brought, with its file's text: the text is what is kept and sent. */
export type OwnFigure = { readonly figure: Figure; readonly text: string }

/** The figure of a user's file. Its id has a colon, which no demo's has: the two never clash. */
export const ownFigure = (figure: Figure, text: string, file: string): OwnFigure => ({
  figure: { ...figure, id: `own:${file}` },
  text,
})

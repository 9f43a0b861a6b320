import type { OwnFigure } from '../figure/ownFigure.ts'
import { ownFigure } from '../figure/ownFigure.ts'

/**
 * A name for a text that came without one (pasted, or in a link): the same text keeps its name, another text gets the
 * next, so that neither replaces the other.
 * @param kind "pasted text"
 */
export function freshName(own: readonly OwnFigure[], text: string, kind: string): string {
  for (let count = 1; ; count++) {
    const name = count === 1 ? kind : `${kind} ${count}`
    const taken = own.find(({ figure }) => figure.id === ownFigure(figure, '', name).figure.id)
    if (taken === undefined || taken.text === text) return name
  }
}

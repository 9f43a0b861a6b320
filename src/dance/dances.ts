import type { Dance, DanceId } from './dance.ts'
import { freeExercise } from './freeExercise.ts'
import { latinDances } from './latinDances.ts'
import { standardDances } from './standardDances.ts'

/** Every dance by its id. */
export const dances: Readonly<Record<DanceId, Dance>> = {
  ...standardDances,
  ...latinDances,
  exercise: freeExercise,
}

/** Every dance in the order of a competition, standard before Latin; the free exercise last. */
export const danceList: readonly Dance[] = Object.values(dances)

import { prepareGlContext } from './glContext.ts'

// A script of its own, a few lines long, that is there before all others.
prepareGlContext()

// The checks that need no browser, as a program of its own: prints what they found as JSON. Throws when what is compared
// does not agree.
import { poseRates } from './poseRates.ts'
import { seekCost } from './seekCost.ts'
import { soundCost } from './soundCost.ts'

process.stdout.write(JSON.stringify([...poseRates(), seekCost(), ...soundCost(process.cwd())]))

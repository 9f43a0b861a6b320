/** Said wherever slow practice is offered. Usual advice. */
export const SLOW_PRACTICE =
  'Below about half tempo there is no swing and balance is hard: use it for placing and timing only. ' +
  'This is usual advice; your teacher has the last word.'

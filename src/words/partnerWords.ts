import type { Figure, Role } from '../figure/figure.ts'

const MADE_FROM: Readonly<Record<Role, string>> = {
  leader: 'Follower’s part: the natural opposite of the leader’s steps, made by rule. A chart may differ.',
  follower: 'Leader’s part: the natural opposite of the follower’s steps, made by rule. A chart may differ.',
}

/**
 * What is said beside a part that `naturalOpposite` made.
 * @param figure as it is written: its role is the one whose steps are known
 */
export const partnerWords = ({ role }: Pick<Figure, 'role'>): string => MADE_FROM[role]

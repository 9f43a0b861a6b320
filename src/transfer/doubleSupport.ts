/**
 * Half the part of a step (of 1 in progress) in which both feet carry: double support is 20–25 % of a walking step
 * (stance 60–65 % of the stride; Perry & Burnfield, Gait Analysis, from memory).
 */
export const HALF_DOUBLE_SUPPORT = 1 / 8

/** The rest of a division, never below 0. @param by above 0 */
export const modulo = (value: number, by: number): number => ((value % by) + by) % by

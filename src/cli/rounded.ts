/** In CSV and JSON: a tenth of a millimetre. */
export const DECIMALS = 4

/** Never −0. */
export const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0

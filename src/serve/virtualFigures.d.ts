/** The demo figures, compiled at build by `figuresPlugin`, in the order of their files' names. */
declare module 'virtual:figures' {
  export const figures: readonly import('../figure/figure.ts').Figure[]
}

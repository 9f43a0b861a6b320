/**
 * Takes WebGL away, before the page is opened. The canvas renderer is many times as fast as a GPU made of software, and
 * frames are counted here, not timed.
 */
export function withoutGpu() {
  for (const { prototype } of [HTMLCanvasElement, OffscreenCanvas]) {
    const real = /** @type {(this: unknown, ...args: unknown[]) => unknown} */ (prototype.getContext)
    Object.defineProperty(prototype, 'getContext', {
      /** @this {unknown} @param {string} name @param {unknown[]} rest */
      value(name, ...rest) {
        return name.startsWith('webgl') ? null : real.call(this, name, ...rest)
      },
    })
  }
}

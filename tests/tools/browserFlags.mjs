/** How Chromium is started for browser tests and benches. */
export const browserFlags = [
  '--no-sandbox',
  // Keeps WebGL (in software) and composites on the CPU: faster here, and the same picture everywhere.
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--font-render-hinting=none',
  '--autoplay-policy=no-user-gesture-required',
]

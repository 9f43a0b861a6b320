import type { Plugin } from 'vite'
import { CSP_META } from './csp.mjs'

/** Writes the policy into the built page, before anything that loads. */
export function cspPlugin(): Plugin {
  return {
    name: 'overfoot:csp',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: () => [
        {
          tag: 'meta',
          attrs: { 'http-equiv': 'Content-Security-Policy', content: CSP_META },
          injectTo: 'head-prepend',
        },
      ],
    },
  }
}

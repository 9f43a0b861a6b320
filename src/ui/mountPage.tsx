import { flushSync } from 'react-dom'
import { createRoot } from 'react-dom/client'
import { reveal } from './layOutMarkup.ts'
import { Page, type PageProps } from './Page.tsx'

/**
 * Brings the page to life, in place of what came as markup: both are alike, and the browser paints neither between. Markup is
 * not taken over piece by piece, for somebody may have changed it: a browser that translates, an extension.
 * @param home what the page is in
 * @returns what takes it out again
 */
export function mountPage(home: HTMLElement, props: PageProps): () => void {
  const root = createRoot(home)
  flushSync(() => root.render(<Page {...props} />))
  home.inert = false
  reveal(home)
  return () => root.unmount()
}

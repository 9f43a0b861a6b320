import { flushSync } from 'react-dom'
import { createRoot, hydrateRoot } from 'react-dom/client'
import { reveal } from './layOutMarkup.ts'
import { Page, type PageProps } from './Page.tsx'

/**
 * Brings the page to life: takes over what came as markup, or makes it where there is none.
 * @param home what the page is in
 * @returns what takes it out again
 */
export function mountPage(home: HTMLElement, props: PageProps): () => void {
  // Markup has no canvas; it is back before the browser paints.
  props.ready?.home.remove()
  const page = <Page {...props} />
  const root = flushSync(() => {
    if (home.firstElementChild !== null) return hydrateRoot(home, page)
    const made = createRoot(home)
    made.render(page)
    return made
  })
  home.inert = false
  reveal(home)
  return () => root.unmount()
}

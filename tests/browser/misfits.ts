import type { Page } from '@playwright/test'

/**
 * What is shorter on purpose, where there is no room for all of it, and where the whole is:
 * - .panel-sum: one line under a picture; a press on it opens the whole.
 * - select: a closed list shows one line; open, it shows all of it.
 */
const SHORTENED = '.panel-sum, select'
/** Scrolls sideways by itself, for a chart of twelve steps is wider than a phone: the page does not. */
const SCROLLS = '.spread-chart'
/** Lie over a whole picture, which is pressed as one, and over what is written on it. */
const OVER_PICTURES = '.press, .enlarge, .strip-touch'

/**
 * What does not fit on the page as it is: what scrolls sideways, texts that are cut off or stand out of the button or of the
 * page that they belong to, texts on texts, controls with something on them. Empty when all fits.
 */
export function misfits(page: Page): Promise<string[]> {
  return page.evaluate(
    ([shortened, scrolls, overPictures]) => {
      const found: string[] = []
      const nameOf = (element: Element | null): string =>
        `${element?.tagName.toLowerCase()}.${element?.getAttribute('class') ?? ''} “${(element?.textContent ?? '').slice(0, 60)}”`
      const isSeen = (element: Element): boolean =>
        element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
        element.closest('.for-ears') === null &&
        !ancestors(element).some((one) => getComputedStyle(one).clipPath !== 'none')
      const ancestors = (element: Element): Element[] =>
        element.parentElement === null ? [element] : [element, ...ancestors(element.parentElement)]
      // Of a dialog, or of a sheet and of what it leaves free of the page.
      const top = document.querySelector('dialog[open]')
      const root = top ?? document.body
      const elements = [...root.querySelectorAll('*'), root].filter(isSeen)

      const { documentElement } = document
      if (documentElement.scrollWidth > innerWidth) found.push(`the page is ${documentElement.scrollWidth} px wide`)
      for (const element of elements) {
        const { overflowX, overflowY } = getComputedStyle(element)
        const wide = element.scrollWidth - element.clientWidth
        const high = element.scrollHeight - element.clientHeight
        const isScroller = /auto|scroll/.test(overflowX) && !element.matches(scrolls)
        if (isScroller && wide > 0) found.push(`scrolls sideways by ${wide}: ${nameOf(element)}`)
        if (element.matches(shortened) || (element.textContent ?? '').trim() === '') continue
        if (overflowX === 'hidden' && wide > 1) found.push(`cut off by ${wide} in width: ${nameOf(element)}`)
        if (overflowY === 'hidden' && high > 1) found.push(`cut off by ${high} in height: ${nameOf(element)}`)
      }

      type Lines = { readonly parent: Element; readonly text: string; readonly boxes: readonly DOMRect[] }
      const texts: Lines[] = elements.flatMap((parent) =>
        parent.closest('option, select') !== null
          ? []
          : [...parent.childNodes].flatMap((node) => {
              if (!(node instanceof Text) || node.data.trim() === '') return []
              const range = document.createRange()
              range.selectNodeContents(node)
              const boxes = [...range.getClientRects()].filter(({ width, height }) => width > 0 && height > 0)
              return [{ parent, text: node.data.trim(), boxes }]
            }),
      )
      const outside = (inner: DOMRect, outer: DOMRect): number =>
        Math.max(outer.left - inner.left, inner.right - outer.right, outer.top - inner.top, inner.bottom - outer.bottom)
      for (const { parent, text, boxes } of texts) {
        if (parent.closest(`${shortened}, ${scrolls}`) !== null) continue
        const control = parent.closest('button, summary')?.getBoundingClientRect()
        for (const box of boxes) {
          const beyond = Math.max(-box.left, box.right - innerWidth)
          if (beyond > 1) found.push(`${Math.round(beyond)} px off the page: ${nameOf(parent)}`)
          if (control !== undefined && outside(box, control) > 1)
            found.push(`${Math.round(outside(box, control))} px out of its button: ${text} in ${nameOf(parent)}`)
        }
      }

      const overlap = (a: DOMRect, b: DOMRect): number =>
        Math.min(
          Math.min(a.right, b.right) - Math.max(a.left, b.left),
          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top),
        )
      /** What of it is on the screen: of a sheet's, what the sheet shows. */
      const layerOf = (element: Element): Element | null => element.closest('dialog, .sheet')
      const shownIn = ({ left, right, top: above, bottom }: DOMRect, element: Element): boolean => {
        const x = (left + right) / 2
        const y = (above + bottom) / 2
        if (x < 0 || y < 0 || x >= innerWidth || y >= innerHeight) return false
        // A chart that scrolls may lie in a sheet that does.
        const scrollers = ancestors(element).filter((one) => /auto|scroll/.test(getComputedStyle(one).overflowY))
        const isAway = (box: DOMRect): boolean => y <= box.top || y >= box.bottom
        if (scrollers.some((one) => isAway(one.getBoundingClientRect()))) return false
        return document
          .elementsFromPoint(x, y)
          .every((one) => layerOf(one) === null || layerOf(one) === layerOf(element))
      }
      const lines = texts.flatMap(({ parent, boxes }) => {
        if (parent.closest(`.strip-picture, ${shortened}`) !== null) return []
        return boxes.filter((box) => shownIn(box, parent)).map((box) => ({ parent, box }))
      })
      for (const [k, one] of lines.entries()) {
        for (const other of lines.slice(k + 1)) {
          if (layerOf(one.parent) !== layerOf(other.parent) || one.parent.contains(other.parent)) continue
          // A sheet's head stays while its list goes under it.
          if ((one.parent.closest('.sheet-head') === null) !== (other.parent.closest('.sheet-head') === null)) continue
          // Lines of one paragraph touch.
          const height = Math.min(one.box.height, other.box.height)
          if (overlap(one.box, other.box) > 0.3 * height)
            found.push(`on one another: ${nameOf(one.parent)} and ${nameOf(other.parent)}`)
        }
      }

      for (const control of root.querySelectorAll('button, select, input, summary, a[href]')) {
        if (!isSeen(control) || control.matches(overPictures)) continue
        const box = control.getBoundingClientRect()
        for (const part of [0.2, 0.5, 0.8]) {
          const [x, y] = [box.left + part * box.width, box.top + box.height / 2]
          if (!shownIn(new DOMRect(x, y, 0, 0), control)) continue
          const hit = document.elementFromPoint(x, y)
          // Stays in sight while what is under it scrolls.
          const stuck = hit?.closest('.notes-close') ?? null
          if (hit !== null && stuck === null && !control.contains(hit) && !hit.contains(control))
            found.push(`on ${nameOf(control)}: ${nameOf(hit)}`)
        }
      }
      return [...new Set(found)]
    },
    [SHORTENED, SCROLLS, OVER_PICTURES] as const,
  )
}

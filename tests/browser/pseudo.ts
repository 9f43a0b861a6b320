import type { Page } from '@playwright/test'

/**
 * Speaks a language that is two fifths longer than English and has marks on its letters, as German or Finnish would be:
 * every text and every attribute that is read, as it comes. Call before the page is opened. What has no word in it (a
 * count, a size, a single letter: S, Q, L, a key) stays.
 */
export async function speakLonger(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const MORE = 0.4
    const ATTRIBUTES = ['aria-label', 'aria-valuetext', 'alt', 'label', 'placeholder', 'title']
    const PLAIN = 'aceinosuyzACEINOSUYZ'
    const MARKED = 'åçéîñöšûýžÅÇÉÎÑÖŠÛÝŽ'
    /** In brackets, which show where a text ends; what more it is to have is spread over its letters, so that words grow. */
    const longer = (text: string): string => {
      const words = text.trim()
      if (!/\p{L}{2}/u.test(words) || /^\[.*\]$/s.test(words)) return text
      const letters = words.match(/\p{L}/gu)?.length ?? 1
      const each = Math.max(0, Math.ceil(words.length * MORE) - 2) / letters
      let owed = 0.5
      const grown = words.replace(/\p{L}/gu, (letter) => {
        owed += each
        const more = Math.floor(owed)
        owed -= more
        return letter + letter.toLowerCase().repeat(more)
      })
      const marked = grown.replace(/[a-z]/gi, (letter) => MARKED[PLAIN.indexOf(letter)] ?? letter)
      return text.replace(words, () => `[${marked}]`)
    }
    const lengthen = (node: Node): void => {
      if (node instanceof Text) {
        if (node.parentElement?.closest('script, style, textarea') !== null) return
        const text = longer(node.data)
        if (text !== node.data) node.data = text
        return
      }
      if (!(node instanceof Element)) return
      for (const name of ATTRIBUTES) {
        const value = node.getAttribute(name)
        if (value !== null && longer(value) !== value) node.setAttribute(name, longer(value))
      }
      for (const child of node.childNodes) lengthen(child)
    }
    new MutationObserver((changes) => {
      for (const { target, addedNodes, type } of changes) {
        if (type === 'childList') for (const node of addedNodes) lengthen(node)
        else lengthen(target)
      }
    }).observe(document, {
      ...{ subtree: true, childList: true, characterData: true, attributes: true, attributeFilter: ATTRIBUTES },
    })
  })
}

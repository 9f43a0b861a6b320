import { labels } from '../words/labels.ts'

/** Says, without React, that React could not be fetched: the picture stands, and nothing answers. */
export function sayNotLoaded(page: HTMLElement): void {
  const said = document.createElement('div')
  said.className = 'not-loaded'
  said.role = 'alert'
  const text = document.createElement('p')
  text.textContent = labels.notLoaded
  const reload = document.createElement('button')
  reload.type = 'button'
  reload.className = 'quiet-button'
  reload.textContent = labels.reload
  reload.addEventListener('click', () => location.reload())
  said.append(text, reload)
  page.before(said)
}

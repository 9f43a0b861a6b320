const LONGEST = 60

/** Words of letters and digits of any script; a mark (an accent that is no letter of its own) belongs to the letter before it. */
const words = (text: string): string[] => text.normalize('NFC').match(/[\p{L}\p{N}][\p{L}\p{N}\p{M}]*/gu) ?? []

/** The start of a text, no more than so many UTF-16 units and no half characters. */
function startOf(text: string, most: number): string {
  let start = ''
  for (const character of text) {
    if (start.length + character.length > most) break
    start += character
  }
  return start
}

/**
 * A name for a file of clicks, such as "natural-turn-29-bars-a-minute.wav": letters, digits and hyphens, then the ending;
 * at most 60 characters. A title without a letter or digit gives "click". Tempi are told to a hundredth: 29.5 is "29-5".
 */
export function clickFileName(title: string, barsPerMinute: number, ending: 'wav' | 'mid'): string {
  const tempo = words(String(Math.round(barsPerMinute * 100) / 100)).join('-')
  const tail = `-${tempo}-bars-a-minute.${ending}`
  const start = startOf(words(title.toLowerCase()).join('-'), LONGEST - tail.length).replace(/-$/, '')
  return `${start === '' ? 'click' : start}${tail}`
}

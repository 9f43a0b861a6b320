/** One declaration of a style sheet that says a colour. */
export type ColourDeclaration = {
  readonly selector: string
  readonly property: string
  readonly value: string
  /** The custom properties it takes, without the dashes. */
  readonly tokens: readonly string[]
  /** Inside `@media (forced-colors: active)`. */
  readonly forced: boolean
}

const SAYS_COLOUR =
  /^(color|background(-color|-image)?|border(-(top|right|bottom|left|block|inline)(-(start|end))?)?(-color)?|outline(-color)?|fill|stroke|box-shadow|text-shadow|accent-color|caret-color|text-decoration(-color)?)$/

/** The declarations of a style sheet that say a colour, in order. Nesting of rules in rules is not known. */
export function colourDeclarations(sheet: string): ColourDeclaration[] {
  const found: ColourDeclaration[] = []
  const open: string[] = []
  for (const [, text = '', end = ''] of sheet.replace(/\/\*.*?\*\//gs, '').matchAll(/([^{};]*)([{};])/g)) {
    const [property = '', value] = text.split(/:(.*)/s).map((part) => part.trim())
    if (end === '{') open.push(text.trim().replace(/\s+/g, ' '))
    else if (value !== undefined && SAYS_COLOUR.test(property)) {
      const forced = open.some((rule) => rule.includes('forced-colors: active'))
      const tokens = [...value.matchAll(/var\(--([\w-]+)\)/g)].map(([, name = '']) => name)
      found.push({ selector: open.at(-1) ?? '', property, value, tokens, forced })
    }
    if (end === '}') open.pop()
  }
  return found
}

/** What may stand in such a value and is no colour of its own. */
const NO_COLOUR = new Set(
  `transparent currentcolor inherit none solid dashed dotted underline inset center closest-side circle no-repeat
  radial-gradient linear-gradient calc min max`.split(/\s+/),
)
/** CSS Color 4, system colours. */
const SYSTEM = new Set(
  `AccentColor AccentColorText ActiveText ButtonBorder ButtonFace ButtonText Canvas CanvasText Field FieldText GrayText
  Highlight HighlightText LinkText Mark MarkText SelectedItem SelectedItemText VisitedText`.split(/\s+/),
)

/** The colours that a declaration writes out: none, but in a shadow or behind a dialog, or of the system's where it chooses. */
export function literalColours({ selector, property, value, forced }: ColourDeclaration): string[] {
  const shade = property === 'box-shadow' || selector.includes('::backdrop')
  const bare = value.replace(/var\(--[\w-]+\)/g, '').replace(shade ? /rgb\(0 0 0 \/ [\d.]+\)/g : /$^/, '')
  // Words, functions and # signs, but not the units of numbers.
  const words = bare.match(/#[\da-f]+|(?<![\w.%-])[a-z][\w-]*/gi) ?? []
  return words.filter((word) => !NO_COLOUR.has(word) && !(forced && SYSTEM.has(word)))
}

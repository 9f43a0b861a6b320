/** A text with the name that its file is to have. */
export type SavedText = { readonly name: string; readonly text: string }

/** Milliseconds after which no browser still reads the address. */
const READ_BY = 10_000

/** Hands a text to the browser's downloads. */
export function saveText({ name, text }: SavedText): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/yaml' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), READ_BY)
}

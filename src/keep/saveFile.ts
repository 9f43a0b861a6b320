/** What a file is to hold, its name and its kind (MIME). */
export type SavedFile = { readonly name: string; readonly content: BlobPart; readonly type: string }

/** Milliseconds after which no browser still reads the address. */
const READ_BY = 10_000

/** Hands a file to the browser's downloads. */
export function saveFile({ name, content, type }: SavedFile): void {
  const address = URL.createObjectURL(new Blob([content], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), READ_BY)
}

import { saveFile } from './saveFile.ts'

/** A text with the name that its file is to have. */
export type SavedText = { readonly name: string; readonly text: string }

/** Hands a figure's text to the browser's downloads. */
export const saveText = ({ name, text }: SavedText): void => saveFile({ name, content: text, type: 'text/yaml' })

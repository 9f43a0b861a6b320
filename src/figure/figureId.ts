/** A figure's stable name: the file's without its folders and its ending. */
export function figureId(file: string): string {
  const name = file.slice(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1)
  return name.replace(/(\.figure)?\.ya?ml$/i, '')
}

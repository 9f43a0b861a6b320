/**
 * Cuts a line into dashes.
 * @param points x and y in turn
 * @param closed also from the last point to the first; the dashes are then stretched to a whole number
 * @param on, off lengths of dash and gap, in the units of the points, both above 0
 * @returns one list of points per dash
 */
export function dashes(points: readonly number[], closed: boolean, on: number, off: number): number[][] {
  const line = closed ? [...points, ...points.slice(0, 2)] : points
  let length = 0
  for (let i = 2; i < line.length; i += 2) length += stepLength(line, i)
  if (!(length > 0)) return []
  const stretch = closed ? length / ((on + off) * Math.max(1, Math.round(length / (on + off)))) : 1
  const [dashOn, dashOff] = [on * stretch, off * stretch]
  // A closed line begins in the middle of a dash's first half, so that no seam shows; the last gap ends at the start.
  let left = dashOn
  let drawing = true
  let dash: number[] = line.slice(0, 2)
  const found: number[][] = []
  for (let i = 2; i < line.length; i += 2) {
    const [x0, y0, x1, y1] = [line[i - 2], line[i - 1], line[i], line[i + 1]] as [number, number, number, number]
    const step = stepLength(line, i)
    let done = 0
    while (step - done > left) {
      done += left
      const [x, y] = [x0 + ((x1 - x0) * done) / step, y0 + ((y1 - y0) * done) / step]
      if (drawing) {
        dash.push(x, y)
        found.push(dash)
      }
      dash = [x, y]
      drawing = !drawing
      left = drawing ? dashOn : dashOff
    }
    left -= step - done
    if (drawing) dash.push(x1, y1)
  }
  if (drawing && dash.length > 2) found.push(dash)
  return found
}

function stepLength(line: readonly number[], i: number): number {
  return Math.hypot((line[i] as number) - (line[i - 2] as number), (line[i + 1] as number) - (line[i - 1] as number))
}

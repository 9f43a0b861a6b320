/** Fed to the unpacker at a time, bytes: it can grow a thousandfold, and is asked to stop in between. */
const PIECE = 64

const bytesOf = (binary: string): Uint8Array<ArrayBuffer> => Uint8Array.from(binary, (sign) => sign.charCodeAt(0))

/** A text as letters, digits, - and _: deflated (RFC 1951), then base64url (RFC 4648, section 5) without padding. */
export async function packText(text: string): Promise<string> {
  const deflated = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'))
  let binary = ''
  for (const byte of new Uint8Array(await new Response(deflated).arrayBuffer())) binary += String.fromCharCode(byte)
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')
}

/**
 * @param most bytes of text; unpacking stops as soon as there are more
 * @returns null when it is no packed text, or too long a one
 */
export async function unpackText(packed: string, most: number): Promise<string | null> {
  try {
    const bytes = bytesOf(atob(packed.replaceAll('-', '+').replaceAll('_', '/')))
    const inflated = await inflate(bytes, most)
    return inflated === null ? null : new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(inflated)
  } catch {
    return null
  }
}

async function inflate(bytes: Uint8Array<ArrayBuffer>, most: number): Promise<Uint8Array | null> {
  let from = 0
  const pieces = new ReadableStream<Uint8Array<ArrayBuffer>>({
    pull(controller) {
      if (from >= bytes.length) controller.close()
      else controller.enqueue(bytes.subarray(from, from + PIECE))
      from += PIECE
    },
  })
  const reader = pieces.pipeThrough(new DecompressionStream('deflate-raw')).getReader()
  const whole = new Uint8Array(most)
  let length = 0
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    if (length + next.value.length > most) {
      await reader.cancel()
      return null
    }
    whole.set(next.value, length)
    length += next.value.length
  }
  return whole.subarray(0, length)
}

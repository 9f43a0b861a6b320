import { useEffect, useState } from 'react'

/** Told to ears only when it has not changed for so long, in milliseconds: at every tap it would chatter. */
const SETTLED = 1200

/** A sentence that changes at every tap: seen at once, announced when it has come to rest. */
export function SettledStatus({ text }: { readonly text: string }) {
  const [said, setSaid] = useState(text)
  useEffect(() => {
    const timer = setTimeout(() => setSaid(text), SETTLED)
    return () => clearTimeout(timer)
  }, [text])
  return (
    <div>
      <p aria-hidden="true">{text}</p>
      <p className="for-ears" role="status">
        {said}
      </p>
    </div>
  )
}

import type { Tone } from '../scene/panelPicture.ts'
import { ToneMark } from './ToneMark.tsx'

/** A way's sign and name; what follows a colon is quieter, and left out where there is no room. */
export function PanelTitle({ tone, name }: { readonly tone: Tone; readonly name: string }) {
  const [first, ...rest] = name.split(': ')
  return (
    <>
      <ToneMark tone={tone} />
      <span>
        <b>{first}</b>
        {rest.length > 0 ? <span className="panel-more">: {rest.join(': ')}</span> : null}
      </span>
    </>
  )
}

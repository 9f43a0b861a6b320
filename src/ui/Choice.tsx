import { useId } from 'react'

type Option<Value> = {
  readonly value: Value
  readonly text: string
  readonly disabled?: boolean
  /** Those of a group stand together, under its name. */
  readonly group?: string
}

type Props<Value> = {
  readonly label: string
  readonly value: Value
  readonly options: readonly Option<Value>[]
  readonly choose: (value: Value) => void
  readonly className?: string
}

/** The options in runs of the same group. */
function runs<Value>(options: readonly Option<Value>[]) {
  const found: { readonly group: string | undefined; readonly members: Option<Value>[] }[] = []
  for (const option of options) {
    const last = found.at(-1)
    if (last !== undefined && last.group === option.group) last.members.push(option)
    else found.push({ group: option.group, members: [option] })
  }
  return found
}

/** Each text finds its own direction, so that one in another script does not turn the others round. */
const listed = <Value extends string | number>({ value, text, disabled = false }: Option<Value>) => (
  <option key={value} value={value} disabled={disabled} dir="auto">
    {text}
  </option>
)

/** A labelled native list. Values are told apart by their text form. */
export function Choice<Value extends string | number>({ label, value, options, choose, className }: Props<Value>) {
  const id = useId()
  return (
    <div className={className === undefined ? 'choice' : `choice ${className}`}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const chosen = options[event.currentTarget.selectedIndex]
          if (chosen !== undefined) choose(chosen.value)
        }}
      >
        {runs(options).map(({ group, members }) =>
          group === undefined ? (
            members.map(listed)
          ) : (
            <optgroup key={group} label={group}>
              {members.map(listed)}
            </optgroup>
          ),
        )}
      </select>
    </div>
  )
}

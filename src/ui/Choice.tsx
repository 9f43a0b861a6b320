import { useId } from 'react'

type Option<Value> = { readonly value: Value; readonly text: string; readonly disabled?: boolean }

type Props<Value> = {
  readonly label: string
  readonly value: Value
  readonly options: readonly Option<Value>[]
  readonly choose: (value: Value) => void
  readonly className?: string
}

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
        {options.map((option) => (
          <option key={option.value} value={option.value} disabled={option.disabled ?? false}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  )
}

/** One of a few, each by its word. */
export const Choice = <T extends string | number>({
  label,
  value,
  among,
  onChange,
}: {
  readonly label: string
  readonly value: T
  readonly among: readonly (readonly [value: T, word: string])[]
  readonly onChange: (value: T) => void
}) => (
  <label>
    {label}
    <select
      value={value}
      onChange={({ target }) => {
        const chosen = among[target.selectedIndex]
        if (chosen) onChange(chosen[0])
      }}
    >
      {among.map(([each, word]) => (
        <option key={each} value={each}>
          {word}
        </option>
      ))}
    </select>
  </label>
)

/** Yes or no. */
export const Check = ({
  label,
  checked,
  onChange,
}: {
  readonly label: string
  readonly checked: boolean
  readonly onChange: (checked: boolean) => void
}) => (
  <label className="check">
    <input type="checkbox" checked={checked} onChange={({ target }) => onChange(target.checked)} />
    {label}
  </label>
)

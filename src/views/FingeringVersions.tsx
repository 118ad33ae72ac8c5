import { useEffect, useRef, useState } from 'react'
import { freeName, originChoices, type FingeringWords } from '@/app/fingerings'
import type { FingeringVersion } from '@/journal/fingerings'
import type { EventId } from '@/journal/ids'
import { fingeringText } from '@/text/fingering'
import { useApp } from './context'
import { countDigits, describeDifferences, describeVersion } from './fingeringWords'
import { usePieceFingerings, type ComparedVersion, type Fingering } from './useFingering'

/** A version in the list; without an id the digits of the file. */
export interface Listed {
  readonly id: EventId | undefined
  readonly version: FingeringVersion | undefined
  readonly compared: ComparedVersion | undefined
}

/** The versions side by side: one is chosen, each can be named anew, copied and removed. */
export const FingeringVersions = ({
  piece,
  listed,
  onSay,
}: Pick<Fingering, 'piece'> & {
  readonly listed: readonly Listed[]
  readonly onSay: (words: string) => void
}) => {
  const app = useApp()
  const { names, versions: words } = fingeringText
  const { score, fileFingers } = piece
  const { versions, chosen } = usePieceFingerings(piece)
  const [renamed, setRenamed] = useState<EventId>()
  const copy = (version: FingeringVersion | undefined): void => {
    const name = freeName(versions, version ? names.copy(version.name) : names.file)
    const { origin, remark, fingers } = version ?? {
      origin: 'file' as const,
      remark: '',
      fingers: fileFingers,
    }
    void app.fingerings.begin(score.id, { name, origin, remark, fingers })
    onSay(words.chosen(name))
  }
  return (
    <ul className="fingering-list">
      {listed.map(({ id, version, compared }) => {
        const name = version ? version.name : words.inFile
        return (
          <li key={id ?? 'file'} className="fingering">
            <label className="check" aria-label={name}>
              <input
                type="radio"
                name="fingering"
                checked={id === chosen}
                onChange={() => {
                  void app.fingerings.choose(score.id, id)
                  onSay(words.chosen(name))
                }}
              />
              <span>
                <b>{name}</b>
                <span className="soft">
                  {' '}
                  · {version ? describeVersion(version) : countDigits(fileFingers)}
                </span>
              </span>
            </label>
            {compared && id !== chosen && compared.differences.length > 0 && (
              <p className="fingering-difference">
                {fingeringText.besideChosen(describeDifferences(compared.differences))}
              </p>
            )}
            <span className="row tight fingering-buttons">
              {version && (
                <button
                  type="button"
                  className="plain"
                  aria-expanded={renamed === id}
                  aria-label={words.nameNamed(name)}
                  onClick={() => setRenamed(renamed === id ? undefined : id)}
                >
                  {words.name}
                </button>
              )}
              <button
                type="button"
                className="plain"
                aria-label={words.copyNamed(name)}
                onClick={() => copy(version)}
              >
                {words.copy}
              </button>
              {version && (
                <button
                  type="button"
                  className="plain"
                  aria-label={words.removeNamed(name)}
                  onClick={() => {
                    void app.fingerings.erase(score.id, version.id)
                    onSay(words.removed(name))
                  }}
                >
                  {words.remove}
                </button>
              )}
            </span>
            {version && renamed === id && (
              <Words
                version={version}
                onDone={(words) => {
                  setRenamed(undefined)
                  void app.fingerings.describe(score.id, version.id, words)
                }}
              />
            )}
          </li>
        )
      })}
    </ul>
  )
}

/** Its name, where it comes from, and a remark. */
const Words = ({
  version,
  onDone,
}: {
  readonly version: FingeringVersion
  readonly onDone: (words: FingeringWords) => void
}) => {
  const [words, setWords] = useState<FingeringWords>(version)
  const { name, origin, remark } = words
  const text = fingeringText.versions
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => field.current?.select(), [])
  return (
    <form
      className="row fingering-words"
      onSubmit={(event) => {
        event.preventDefault()
        onDone({ name: name.trim() || version.name, origin, remark: remark.trim() })
      }}
    >
      <label>
        {text.name}
        <input
          ref={field}
          value={name}
          maxLength={120}
          onChange={({ target }) => setWords({ ...words, name: target.value })}
        />
      </label>
      <label>
        {text.origin}
        <select
          value={origin}
          onChange={({ target }) =>
            setWords({
              ...words,
              origin: originChoices.find((each) => each === target.value) ?? origin,
            })
          }
        >
          {originChoices.map((each) => (
            <option key={each} value={each}>
              {fingeringText.origins[each]}
            </option>
          ))}
        </select>
      </label>
      <label>
        {text.remark}
        <input
          value={remark}
          maxLength={500}
          onChange={({ target }) => setWords({ ...words, remark: target.value })}
        />
      </label>
      <button type="submit">{text.keep}</button>
    </form>
  )
}

import type { ChangeEvent, RefObject } from 'react'
import type { ChosenFile } from '@/app/library'
import { chosenFile } from './useDrop'

/** The browser's choice of files of a record; a button beside it opens it. */
export const ChooseFiles = ({
  picker,
  label,
  choose,
}: {
  readonly picker: RefObject<HTMLInputElement | null>
  readonly label: string
  readonly choose: (files: readonly ChosenFile[]) => Promise<void>
}) => {
  const change = async ({ target }: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const files = Array.from(target.files ?? [], chosenFile)
    // So that the same file can be chosen again.
    target.value = ''
    if (files.length > 0) await choose(files)
  }
  return (
    <input
      ref={picker}
      className="unseen"
      type="file"
      multiple
      accept=".jsonl,.ndjson,.json,.txt,application/jsonl"
      tabIndex={-1}
      aria-label={label}
      onChange={(event) => void change(event)}
    />
  )
}

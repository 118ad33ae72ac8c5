import type { ChangeEvent, RefObject } from 'react'
import type { ChosenFile } from '@/app/library'
import { chosenFile } from './useDrop'

/** What the file dialog offers for a piece, and for a record; the content decides, whatever the name. */
export const scoreFiles =
  '.musicxml,.xml,.mxl,.mid,.midi,.kar,.rmi,.txt,audio/midi,application/vnd.recordare.musicxml,application/vnd.recordare.musicxml+xml'
export const recordFiles = '.jsonl,.ndjson,.json,.txt,application/jsonl'

/** The browser's choice of files; a button beside it opens it. */
export const ChooseFiles = ({
  picker,
  label,
  accept,
  isOne = false,
  choose,
}: {
  readonly picker: RefObject<HTMLInputElement | null>
  readonly label: string
  readonly accept: string
  /** No more than one file is wanted. */
  readonly isOne?: boolean
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
      multiple={!isOne}
      accept={accept}
      tabIndex={-1}
      aria-label={label}
      onChange={(event) => void change(event)}
    />
  )
}

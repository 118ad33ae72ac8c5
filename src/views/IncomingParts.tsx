import type { ReactNode } from 'react'
import { musicText } from '@/text/music'
import { recordsText } from '@/text/records'

/** What the ways of a record into this machine show in common: into one's own record, and that of a student. */

export const Reading = ({
  fileName,
  done,
  children,
}: {
  readonly fileName: string
  /** A share. */
  readonly done: number
  /** The way out. */
  readonly children: ReactNode
}) => (
  <div className="import">
    <Progress words={(share) => recordsText.incoming.reading(fileName, share)} done={done} of={1} />
    {children}
  </div>
)

export const Taking = ({
  fileName,
  done,
  of,
}: {
  readonly fileName: string
  readonly done: number
  readonly of: number
}) => (
  <div className="import">
    <Progress words={(share) => recordsText.incoming.taking(fileName, share)} done={done} of={of} />
  </div>
)

const Progress = ({
  words,
  done,
  of,
}: {
  readonly words: (share: string) => string
  readonly done: number
  readonly of: number
}) => (
  <label className="import-progress">
    {words(musicText.percent(Math.round((done / Math.max(1, of)) * 100)))}
    <progress value={done} max={of} />
  </label>
)

/** What came in, and events that could not. */
export const CameIn = ({
  taken,
  words,
  children,
}: {
  readonly taken: number
  readonly words: (taken: number) => string
  readonly children: ReactNode
}) => (
  <div className="import" role="status">
    <p>{children}</p>
    {taken > 0 && <p>{words(taken)}</p>}
  </div>
)

export const CannotComeIn = ({
  fileName,
  message,
  children,
}: {
  readonly fileName: string
  readonly message: string
  /** The way on, where there is one. */
  readonly children?: ReactNode
}) => (
  <div className="import notice" role="alert">
    <p>
      <b>{fileName}</b> {message}
    </p>
    {children}
  </div>
)

/** So many lines are told one by one. */
const mostTold = 8

export const UnreadLines = ({
  unread,
  words,
}: {
  readonly unread: readonly { readonly of?: string; readonly line: number; readonly why: string }[]
  readonly words: (n: number) => string
}) =>
  unread.length > 0 && (
    <div className="notice">
      <p>{words(unread.length)}</p>
      <ul className="flaws">
        {unread.slice(0, mostTold).map(({ of, line, why }) => (
          <li key={`${of} ${line}`}>{recordsText.incoming.line(line, of, why)}</li>
        ))}
      </ul>
      {unread.length > mostTold && <p>{recordsText.incoming.more(unread.length - mostTold)}</p>}
    </div>
  )

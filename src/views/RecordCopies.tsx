import { useEffect, useState } from 'react'
import type { FolderState } from '@/app/copyPorts'
import { useApp, useSelected } from './context'
import { folderWords, keepingWords, reminderWords, savedWords } from './recordWords'

/** The record on its way to other places: as a file, into a folder; and what the browser promises. */
export const RecordCopies = () => {
  const app = useApp()
  const { saved, since, keeping, folder } = useSelected(app.records.copies, (state) => state)
  useEffect(() => void app.records.lookAtCopies(), [app])
  return (
    <>
      <SaveRecord when={savedWords(saved, since)} />
      <FolderCopy folder={folder} />
      {keeping && (
        <section className="bring" aria-labelledby="keeping">
          <h2 id="keeping">In this browser</h2>
          <p>{keepingWords(keeping)}</p>
          {!keeping.promised && (
            <button type="button" onClick={() => void app.records.askToKeep()}>
              Ask the browser to keep it
            </button>
          )}
        </section>
      )}
    </>
  )
}

const SaveRecord = ({ when }: { readonly when: string }) => {
  const app = useApp()
  const [problem, setProblem] = useState<string>()
  const saveTable = async (): Promise<void> => {
    const saved = await app.records.saveTable()
    setProblem(saved.ok ? undefined : `The table could not be saved. ${saved.reason}`)
  }
  return (
    <section className="bring" aria-labelledby="save">
      <h2 id="save">Save it</h2>
      <p>
        The whole record with every key that was played, as JSON Lines (<i>.jsonl</i>): the file to
        keep. The repetitions as a table (<i>.csv</i>): for a spreadsheet; it cannot be taken in
        again.
      </p>
      <div className="row">
        <button type="button" onClick={() => void app.records.save()}>
          Save the whole record
        </button>
        <button type="button" onClick={() => void saveTable()}>
          Save a table of repetitions
        </button>
      </div>
      <p className="soft">{when}</p>
      {problem !== undefined && <p role="alert">{problem}</p>}
    </section>
  )
}

const FolderCopy = ({ folder }: { readonly folder: FolderState }) => {
  const { records } = useApp()
  const words = folderWords(folder)
  return (
    <section className="bring" aria-labelledby="folder">
      <h2 id="folder">A second copy in a folder</h2>
      {folder.kind === 'failed' ? (
        <p className="notice" role="alert">
          {words}
        </p>
      ) : (
        <p role="status">{words}</p>
      )}
      <div className="row">
        {folder.kind === 'none' && <Choose word="Choose a folder …" />}
        {folder.kind === 'asks' && (
          <button type="button" className="primary" onClick={() => void records.folder.allow()}>
            Let it write
          </button>
        )}
        {(folder.kind === 'ready' || folder.kind === 'failed') && (
          <button type="button" onClick={() => void records.folder.write()}>
            Write now
          </button>
        )}
        {folder.kind === 'failed' && <Choose word="Choose another folder …" />}
        {folder.kind !== 'none' && folder.kind !== 'unsupported' && (
          <button type="button" onClick={() => void records.folder.stop()}>
            Stop, and leave the files there
          </button>
        )}
      </div>
    </section>
  )
}

const Choose = ({ word }: { readonly word: string }) => {
  const { records } = useApp()
  return (
    <button type="button" onClick={() => void records.folder.choose()}>
      {word}
    </button>
  )
}

/** After a session: what the copies need, and nothing where they need nothing. */
export const CopyReminder = () => {
  const { records, session } = useApp()
  useEffect(() => void records.sessionEnded(session.store.getState().events), [records, session])
  const { saved, since = 0, reminder, folder } = useSelected(records.copies, (state) => state)
  if (folder.kind === 'asks')
    return (
      <p className="row">
        {folderWords(folder)}
        <button type="button" onClick={() => void records.folder.allow()}>
          Let it write
        </button>
      </p>
    )
  if (folder.kind === 'failed')
    return (
      <p className="notice" role="alert">
        {folderWords(folder)}
      </p>
    )
  return reminder ? <p role="status">{reminderWords(saved, since)}</p> : null
}
